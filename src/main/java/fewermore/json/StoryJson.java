package fewermore.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json.Unusable;
import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** A story as JSON: the form that commands read and write and that the store keeps. */
public final class StoryJson {
  /** Largest number a story may hold: far above "within 100", so that tests of the border can be told. */
  public static final int LARGEST = 1_000_000;

  private StoryJson() {}

  public static ObjectNode write(Comparison story) {
    ObjectNode node = Json.object();
    ObjectNode persons = node.putObject("persons");
    persons.put("larger", story.persons().larger());
    persons.put("smaller", story.persons().smaller());
    node.set("thing", thing(story.thing()));
    node.set("otherThing", thing(story.otherThing()));
    var wider = node.putArray("wider");
    story.wider().forEach(word -> wider.add(thing(word)));
    var numbers = node.putArray("numbers");
    story.given().forEach(role ->
        numbers.addObject().put("role", role.id()).put("value", story.value(role)));
    story.extras().forEach(extra -> numbers.addObject().put("role", "extra").put("value", extra));
    node.put("unknown", story.unknown().id());
    node.put("wording", story.wording().id());
    return node;
  }

  /** @throws Unusable saying which field, what was expected and one thing to try */
  public static Comparison read(JsonNode node) {
    if (node == null || !node.isObject()) {
      throw new Unusable("story: an object was expected; put the story's fields in { }");
    }
    JsonNode persons = node.path("persons");
    Role unknown = Role.of(text(node, "unknown")).orElseThrow(() ->
        new Unusable("story.unknown: larger, smaller or difference was expected; name the quantity that is asked"));
    Wording wording = Wording.of(text(node, "wording")).orElseThrow(() ->
        new Unusable("story.wording: more, fewer or difference was expected; name what the comparing sentence says"));
    if (wording == Wording.DIFFERENCE && unknown != Role.DIFFERENCE) {
      throw new Unusable("story.wording: \"difference\" goes with unknown \"difference\" only; use more or fewer");
    }
    Map<Role, Integer> given = new EnumMap<>(Role.class);
    List<Integer> extras = new ArrayList<>();
    if (!node.path("numbers").isArray()) {
      throw new Unusable("story.numbers: a list was expected; give the two known numbers, each with its role");
    }
    for (JsonNode number : node.path("numbers")) {
      int value = value(number.path("value"));
      if ("extra".equals(number.path("role").asText())) {
        extras.add(value);
        continue;
      }
      Role role = Role.of(number.path("role").asText()).orElseThrow(() -> new Unusable(
          "story.numbers: role larger, smaller, difference or extra was expected, found \""
              + number.path("role").asText() + "\"; name the number's role"));
      if (role == unknown || given.put(role, value) != null) {
        throw new Unusable("story.numbers: one number for each known quantity was expected, \"" + role.id()
            + "\" is " + (role == unknown ? "the unknown" : "there twice") + "; give the other two, once each");
      }
    }
    if (given.size() != 2) {
      throw new Unusable("story.numbers: two known numbers were expected, found " + given.size()
          + "; give both with their roles");
    }
    return new Comparison(
        new Persons(name(persons.path("larger")), name(persons.path("smaller"))),
        requireThing(node.path("thing")),
        node.hasNonNull("otherThing") ? requireThing(node.path("otherThing")) : null,
        things(node.path("wider")),
        relation(given, unknown), unknown, wording, extras);
  }

  private static Relation relation(Map<Role, Integer> given, Role unknown) {
    int larger = unknown == Role.LARGER
        ? given.get(Role.SMALLER) + given.get(Role.DIFFERENCE) : given.get(Role.LARGER);
    int smaller = unknown == Role.SMALLER
        ? larger - given.get(Role.DIFFERENCE) : given.get(Role.SMALLER);
    if (smaller < 0 || larger < smaller) {
      throw new Unusable("story.numbers: larger = smaller + difference was expected to hold with numbers from 0 up; "
          + "check which of the two is larger");
    }
    return new Relation(larger, smaller, larger - smaller);
  }

  private static int value(JsonNode node) {
    if (!node.isIntegralNumber() || !node.canConvertToInt() || node.asInt() < 0 || node.asInt() > LARGEST) {
      throw new Unusable("story.numbers: value: a whole number from 0 to " + LARGEST + " was expected, found "
          + node + "; write it in digits, without quotes");
    }
    return node.asInt();
  }

  private static String text(JsonNode node, String field) {
    return node.path(field).asText();
  }

  private static String name(JsonNode node) {
    return node.isTextual() && !node.asText().isBlank() ? node.asText() : null;
  }


  private static JsonNode thing(Thing thing) {
    return thing == null ? Json.mapper().getNodeFactory().nullNode() : Json.array().add(thing.one()).add(thing.many());
  }

  private static Thing requireThing(JsonNode node) {
    if (!node.isArray() || node.size() != 2 || node.get(0).asText().isBlank() || node.get(1).asText().isBlank()) {
      throw new Unusable("story.thing: two words, one and many, were expected; for example [\"shell\",\"shells\"]");
    }
    return new Thing(node.get(0).asText(), node.get(1).asText());
  }

  private static List<Thing> things(JsonNode node) {
    List<Thing> things = new ArrayList<>();
    node.forEach(each -> things.add(requireThing(each)));
    return things;
  }
}
