package fewermore.web.child;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.calculation.StepWords;
import fewermore.json.Json;
import fewermore.json.WorkJson;
import java.util.List;
import java.util.Locale;

/**
 * The one page that holds a whole sitting: My problems and Show your work, so that moving between
 * problems needs no network. {@code pages/child/mine.html}.
 *
 * @param language {@code en} or {@code es}
 * @param sitting id of the sitting
 * @param key may only add work to this sitting
 * @param problems at most ten
 */
public record SittingPage(String language, Me me, String sitting, String key, List<ShownProblem> problems) {
  public SittingPage {
    problems = List.copyOf(problems);
  }

  /**
   * What the page's script needs, as JSON that can stand in a script block: no {@code <} is left in it.
   * The child's name is not part of it.
   */
  public String data() {
    ObjectNode data = Json.object();
    data.put("sitting", sitting);
    data.put("key", key);
    data.put("language", language);
    var list = data.putArray("problems");
    problems.forEach(problem -> list.add(problem(problem)));
    ObjectNode texts = data.putObject("texts");
    ChildTexts words = ChildTexts.in(language);
    words.startingWith("say.").forEach((key, text) -> {
      if (asksStrategy() || !key.startsWith("strategy.")) {
        texts.put(key, text);
      }
    });
    if (asksStrategy()) {
      StepWords.in(Locale.forLanguageTag(language)).picture().forEach((key, text) -> texts.put("step." + key, text));
    }
    for (String group : List.of("part.", "state.")) {
      words.startingWith(group).forEach((key, text) -> texts.put(group + key, text));
    }
    return Json.write(data).replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029");
  }

  /** Whether a problem asks to work it out: the page is then larger by that part. */
  public boolean asksStrategy() {
    return problems.stream().anyMatch(problem -> problem.asks("strategy"));
  }

  private static ObjectNode problem(ShownProblem problem) {
    ObjectNode node = Json.object();
    node.put("work", problem.work());
    node.put("number", problem.number());
    var sentences = node.putArray("sentences");
    problem.sentences().forEach(sentences::add);
    var spoken = node.putArray("spoken");
    problem.spoken().forEach(spoken::add);
    var lanes = node.putArray("lanes");
    problem.lanes().forEach(lane -> lanes.addObject().put("id", lane.id()).put("name", lane.name()));
    var numbers = node.putArray("numbers");
    problem.numbers().forEach(number -> numbers.add(number.toString()));
    var asked = node.putArray("asked");
    problem.asked().forEach(part -> asked.add(part.id()));
    node.put("triesLeft", problem.triesLeft());
    node.put("handUp", problem.handUp());
    node.put("recorded", problem.recorded());
    node.put("than", problem.than());
    if (problem.draft() != null) {
      node.putObject("draft")
          .put("age", problem.draft().ageMillis())
          .put("handedIn", problem.draft().handedIn())
          .set("parts", WorkJson.write(problem.draft().parts()));
    }
    if (problem.told() != null) {
      ObjectNode told = node.putObject("told");
      ObjectNode signs = told.putObject("signs");
      problem.told().signs().forEach((part, sign) -> signs.put(part.id(), sign.id()));
      ObjectNode prompts = told.putObject("prompts");
      problem.told().prompts().forEach((part, prompt) -> prompts.put(part.id(), prompt));
    }
    return node;
  }
}
