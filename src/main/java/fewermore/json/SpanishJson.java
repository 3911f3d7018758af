package fewermore.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.json.Json.Unusable;
import fewermore.wording.Gender;
import fewermore.wording.Holder;
import fewermore.wording.Noun;
import fewermore.wording.Pronoun;
import fewermore.wording.TeachersSpanish;
import java.util.ArrayList;
import java.util.List;

/** A teacher's own Spanish as JSON: what a set keeps beside the story. */
public final class SpanishJson {
  private SpanishJson() {}

  public static ObjectNode write(TeachersSpanish spanish) {
    ObjectNode node = Json.object();
    var nouns = node.putArray("nouns");
    for (Noun noun : spanish.nouns()) {
      ObjectNode each = nouns.addObject();
      each.putArray("english").add(noun.one()).add(noun.many());
      each.putArray("spanish").add(noun.spanishOne()).add(noun.spanishMany());
      each.put("gender", noun.gender() == Gender.FEMININE ? "f" : "m");
    }
    var holders = node.putArray("holders");
    spanish.holders().forEach(holder ->
        holders.addObject().put("english", holder.english()).put("spanish", holder.spanish()));
    return node;
  }

  /**
   * @param node may be missing: nothing given
   * @throws Unusable saying which field, what was expected and one thing to try
   */
  public static TeachersSpanish read(JsonNode node) {
    if (node.isMissingNode() || node.isNull()) {
      return TeachersSpanish.NONE;
    }
    List<Noun> nouns = new ArrayList<>();
    for (JsonNode each : node.path("nouns")) {
      nouns.add(new Noun(word(each, "english", 0), word(each, "english", 1), word(each, "spanish", 0),
          word(each, "spanish", 1), gender(each.path("gender").asText())));
    }
    List<Holder> holders = new ArrayList<>();
    for (JsonNode each : node.path("holders")) {
      String english = each.path("english").asText();
      String spanish = each.path("spanish").asText();
      if (english.isBlank() || spanish.isBlank()) {
        throw new Unusable("spanish.holders: english and spanish were expected; give both, each one phrase");
      }
      holders.add(new Holder(english, spanish, Pronoun.NONE));
    }
    return new TeachersSpanish(nouns, holders);
  }

  private static String word(JsonNode noun, String language, int index) {
    String word = noun.path(language).path(index).asText();
    if (word.isBlank()) {
      throw new Unusable("spanish.nouns: " + language + ": two words, one and many, were expected; for example "
          + "\"english\":[\"gizmo\",\"gizmos\"],\"spanish\":[\"chisme\",\"chismes\"],\"gender\":\"m\"");
    }
    return word;
  }

  private static Gender gender(String letter) {
    return switch (letter) {
      case "f" -> Gender.FEMININE;
      case "m" -> Gender.MASCULINE;
      default -> throw new Unusable("spanish.nouns: gender: f or m was expected, found \"" + letter + "\"; give one");
    };
  }
}
