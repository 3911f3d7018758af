package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.classroom.Child;
import fewermore.json.Json;
import fewermore.json.WorkJson;
import fewermore.marking.Work;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A tablet that speaks the protocol without a browser. */
final class Tablet {
  private static final Pattern DATA =
      Pattern.compile("<script[^>]*type=\"application/json\"[^>]*>(.*?)</script>", Pattern.DOTALL);

  final Browser browser;
  final String page = "p" + Long.toHexString(System.nanoTime());
  String sitting;
  String key;
  JsonNode problems;

  Tablet(Rig rig) {
    this.browser = new Browser(rig.tabletAddress());
  }

  static Tablet comeIn(Rig rig, Child child) {
    Tablet tablet = new Tablet(rig);
    tablet.in(rig, child);
    return tablet;
  }

  void in(Rig rig, Child child) {
    assertEquals(303, browser.get("/in/" + rig.door()).statusCode());
    assertEquals(200, browser.get("/come-in/" + child.id()).statusCode());
    assertEquals(303, browser.post("/come-in/" + child.id(), Map.of()).statusCode());
    load();
  }

  /** Loads the page of the sitting. */
  void load() {
    HttpResponse<String> mine = browser.get("/mine");
    assertEquals(200, mine.statusCode());
    Matcher data = DATA.matcher(mine.body());
    data.find();
    JsonNode json = Json.read(data.group(1));
    sitting = json.path("sitting").asText();
    key = json.path("key").asText();
    problems = json.path("problems");
  }

  String work(int number) {
    return problems.get(number - 1).path("work").asText();
  }

  ObjectNode item(String work, int seq, String kind, Work parts) {
    ObjectNode item = Json.object();
    item.put("work", work).put("page", page).put("seq", seq).put("age", 5).put("kind", kind);
    if (parts != null) {
      item.set("parts", WorkJson.write(parts));
    }
    return item;
  }

  String body(List<ObjectNode> items) {
    ObjectNode body = Json.object().put("sitting", sitting).put("key", key).put("page", page);
    ArrayNode list = body.putArray("items");
    items.forEach(list::add);
    return Json.write(body.put("waiting", items.size()));
  }

  HttpResponse<String> send(ObjectNode... items) {
    return browser.postJson("/work", body(List.of(items)));
  }

  JsonNode sent(ObjectNode... items) {
    HttpResponse<String> response = send(items);
    assertEquals(200, response.statusCode(), response.body());
    return Json.read(response.body());
  }
}
