package fewermore.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What stands on the Board of each class right now: all windows that show it follow. Kept in memory; after a restart
 * the window on the laptop says it anew.
 */
final class Stage {
  /**
   * @param path the page, for example {@code /board/problem/2}
   * @param step from 1
   * @param marks what was tapped or hidden on it, by the page's own ids
   * @param blank whether the Board shows nothing
   */
  record Shown(String path, int step, List<String> marks, boolean blank) {
    Shown {
      marks = List.copyOf(marks);
    }
  }

  static final Shown DOOR = new Shown("/board", 1, List.of(), false);

  private final Live live;
  private final Map<Long, Shown> shown = new ConcurrentHashMap<>();

  Stage(Live live) {
    this.live = live;
  }

  static String topic(long classroom) {
    return "stage-" + classroom;
  }

  Shown of(long classroom) {
    return shown.getOrDefault(classroom, DOOR);
  }

  /** @param window the one that says so: it need not follow itself */
  void show(long classroom, Shown now, String window) {
    shown.put(classroom, now);
    live.publish(topic(classroom), "stage", json(now, window));
  }

  String json(long classroom) {
    return json(of(classroom), "");
  }

  private static String json(Shown now, String window) {
    ObjectNode json = Json.object().put("path", now.path).put("step", now.step).put("blank", now.blank)
        .put("window", window);
    ArrayNode marks = json.putArray("marks");
    now.marks.forEach(marks::add);
    return Json.write(json);
  }
}
