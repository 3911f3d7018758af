package fewermore.web.child;

import fewermore.classroom.Picture;
import fewermore.marking.Bars;
import fewermore.marking.Part;
import fewermore.marking.Sign;
import fewermore.marking.Work;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;

/** An invented class and invented problems for the child's pages. */
final class Samples {
  static final List<Part> ALL_PARTS = List.of(Part.BARS, Part.EQUATION, Part.ANSWER, Part.LABEL);
  static final List<String> NAMES = List.of("Amara", "Anton", "Bo", "Dario", "Elsie", "Felix", "Hana", "Jun", "Kofi",
      "Leif", "Lucía", "Marisol", "Mika", "Nils", "Noor", "Oskar", "Priya", "Ravi", "Samuel", "Talia", "Wren", "Yara",
      "Zadie", "Zoran", "Ada", "Beno", "Cleo", "Emeka", "Ilse", "Maximiliano");

  private Samples() {}

  static Me noor() {
    return new Me("Noor", new ShownPicture("leaf", "moss"));
  }

  static ComeInPage comeIn(String language, int children) {
    List<Tile> tiles = new ArrayList<>();
    for (int i = 0; i < children; i++) {
      tiles.add(new Tile(String.valueOf(i + 1), NAMES.get(i), ShownPicture.of(Picture.ALL.get(i)), i % 5 == 1));
    }
    return new ComeInPage(language, tiles);
  }

  static DoorPage door(String language, int tapped, DoorPage.Problem problem) {
    List<ShownPicture> choices = Picture.ALL.stream().limit(12).map(ShownPicture::of).toList();
    return new DoorPage(language, choices, choices.subList(2, 2 + tapped), problem);
  }

  static ShownProblem shells(int number, Draft draft, Told told) {
    return problem(number, List.of("Theo found 52 shells.", "Mara found 14 fewer shells than Theo.",
        "How many shells did Mara find?"), List.of("Theo", "Mara"), List.of(52, 14), draft, told);
  }

  static ShownProblem stripedShells(int number) {
    return problem(number, List.of("On the beach there are 45 striped shells.", "There are 6 buckets.",
        "There are 18 more striped shells than plain shells.", "How many plain shells are there?"),
        List.of("striped shells", "plain shells"), List.of(45, 6, 18), null, null);
  }

  static ShownProblem boats(int number) {
    return problem(number, List.of("Anna’s boat is 9 feet long.", "Bo’s boat is 17 feet long.",
        "How much longer is Bo’s boat than Anna’s boat?"), List.of("Anna’s boat", "Bo’s boat"), List.of(9, 17), null,
        null);
  }

  static ShownProblem beads(int number) {
    return problem(number, List.of("Mara has 61 beads.", "She has 25 fewer beads than Theo.",
        "How many beads does Theo have?"), List.of("Mara", "Theo"), List.of(61, 25), null, null);
  }

  static ShownProblem spanishShells(int number) {
    return problem(number, List.of("Theo encontró 52 conchas.", "Mara encontró 14 conchas menos que Theo.",
        "¿Cuántas conchas encontró Mara?"), List.of("Theo", "Mara"), List.of(52, 14), null, null);
  }

  /** The same with a strategy asked. */
  static ShownProblem asksStrategy(ShownProblem problem) {
    return new ShownProblem(problem.work(), problem.number(), problem.sentences(), problem.spoken(), problem.lanes(),
        problem.numbers(), List.of(Part.BARS, Part.EQUATION, Part.STRATEGY, Part.ANSWER, Part.LABEL), 3,
        problem.draft(), problem.told());
  }

  static final List<Part> WITH_READING = List.of(Part.READING, Part.BARS, Part.EQUATION, Part.ANSWER, Part.LABEL);
  static final List<Part> EVERY_PART = List.of(Part.READING, Part.BARS, Part.EQUATION, Part.ANSWER, Part.LABEL,
      Part.ESTIMATE);

  /** The same problem with other parts asked. */
  static ShownProblem asking(List<Part> parts, ShownProblem problem) {
    return new ShownProblem(problem.work(), problem.number(), problem.sentences(), problem.spoken(), problem.lanes(),
        problem.numbers(), parts, problem.triesLeft(), problem.draft(), problem.told());
  }

  static ShownProblem handUp(ShownProblem problem) {
    return new ShownProblem(problem.work(), problem.number(), problem.sentences(), problem.spoken(), problem.lanes(),
        problem.numbers(), problem.asked(), problem.triesLeft(), problem.draft(), problem.told(), true, false,
        problem.than());
  }

  static ShownProblem recorded(ShownProblem problem) {
    return new ShownProblem(problem.work(), problem.number(), problem.sentences(), problem.spoken(), problem.lanes(),
        problem.numbers(), problem.asked(), problem.triesLeft(), problem.draft(), problem.told(), false, true,
        problem.than());
  }

  static SittingPage sitting(String language, ShownProblem... problems) {
    return new SittingPage(language, noor(), "s1", "k1", List.of(problems));
  }

  static SittingPage today() {
    Work bars = new Work("", "", "", new Bars("Theo", "52", "14", "x"), null);
    return sitting("en", boats(1),
        shells(2, new Draft(bars, 60_000, true),
            new Told(Map.of(Part.BARS, Sign.LOOK_AGAIN, Part.LABEL, Sign.FITS),
                Map.of(Part.BARS, "Look at your bars again. What does 14 tell you?"))),
        stripedShells(3), beads(4));
  }

  /** The same with its question at the beginning. */
  static ShownProblem questionFirst(ShownProblem problem) {
    List<String> sentences = new ArrayList<>(problem.sentences());
    Collections.rotate(sentences, 1);
    return new ShownProblem(problem.work(), problem.number(), sentences, sentences, problem.lanes(), problem.numbers(),
        problem.asked(), problem.triesLeft(), problem.draft(), problem.told());
  }

  private static ShownProblem problem(int number, List<String> sentences, List<String> lanes, List<Integer> numbers,
      Draft draft, Told told) {
    return new ShownProblem("w" + number, number, sentences, sentences,
        lanes.stream().map(name -> new Lane(name, name)).toList(), numbers, ALL_PARTS, 3, draft, told);
  }
}
