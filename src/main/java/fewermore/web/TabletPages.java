package fewermore.web;

import fewermore.classroom.AssignedProblem;
import fewermore.marking.BarsMarker;
import fewermore.marking.EstimateMarker;
import fewermore.store.SittingStore.AssignedWork;
import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.web.child.Draft;
import fewermore.web.child.Lane;
import fewermore.web.child.ShownProblem;
import fewermore.web.child.Told;
import fewermore.wording.Lexicon;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A problem as the tablet shows it: in the order of the text, and with nothing that gives the answer away. */
final class TabletPages {
  private static final Pattern NUMBER = Pattern.compile("\\d+");

  private TabletPages() {}

  static ShownProblem problem(
      AssignedWork work, int number, String language, int triesLeft, Draft draft, Told told, boolean handUp,
      boolean recorded) {
    AssignedProblem problem = work.problem();
    List<String> sentences = problem.sentences(language);
    String text = String.join(" ", sentences);
    return new ShownProblem(work.id(), number, sentences, problem.spoken(language), lanes(problem.story(), text, spanish(problem, language)),
        numbers(text), work.set().asks().stream().sorted(Comparator.naturalOrder()).toList(), triesLeft, draft, told,
        handUp, recorded, EstimateMarker.amount(problem.story()));
  }

  /** The two that are compared, as the text names them first. */
  private static List<Lane> lanes(Comparison story, String text, boolean spanish) {
    return Stream.of(BarsMarker.name(story, Role.LARGER), BarsMarker.name(story, Role.SMALLER))
        .map(name -> new Lane(name, spanish ? Lexicon.inSpanish(name).orElse(name) : name))
        .sorted(Comparator.comparingInt(lane -> place(text, lane.name())))
        .toList();
  }

  private static boolean spanish(AssignedProblem problem, String language) {
    return "es".equals(language) && !problem.spanish().isEmpty();
  }

  private static int place(String text, String name) {
    int at = text.toLowerCase(Locale.ROOT).indexOf(name.toLowerCase(Locale.ROOT));
    return at < 0 ? text.length() : at;
  }

  /** The numbers that stand in the text, each once, in its order. */
  private static List<Integer> numbers(String text) {
    List<Integer> numbers = new ArrayList<>();
    Matcher number = NUMBER.matcher(text);
    while (number.find()) {
      int value = Integer.parseInt(number.group());
      if (!numbers.contains(value)) {
        numbers.add(value);
      }
    }
    return numbers;
  }
}
