package fewermore.web.teacher;

import fewermore.classroom.Room;
import fewermore.classroom.RoomFacts;
import fewermore.classroom.RoomFacts.Sent;
import fewermore.classroom.SentItem;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Before all work is taken as handed in: whose it is. {@code pages/teacher/room-take.html}, {@code GET /room/take};
 * the form posts nothing but its token to the same address.
 *
 * @param children who began work that is not handed in, and how many pieces
 */
public record TakePage(List<Begun> children, int pieces) {
  public TakePage {
    children = List.copyOf(children);
  }

  public record Begun(String name, int pieces) {}

  public static TakePage of(RoomFacts facts) {
    Map<List<Long>, Boolean> open = new LinkedHashMap<>();
    for (Sent item : facts.sent()) {
      List<Long> key = List.of(item.child(), item.problem());
      if (item.kind() == SentItem.Kind.HANDED_IN) {
        open.put(key, false);
      } else if (item.kind() == SentItem.Kind.DRAFT && !Room.blank(item.parts())) {
        open.putIfAbsent(key, true);
      }
    }
    List<Begun> begun = facts.children().stream()
        .map(child -> new Begun(child.name(), (int) open.entrySet().stream()
            .filter(entry -> entry.getValue() && entry.getKey().get(0) == child.id()).count()))
        .filter(each -> each.pieces > 0).toList();
    return new TakePage(begun, begun.stream().mapToInt(Begun::pieces).sum());
  }
}
