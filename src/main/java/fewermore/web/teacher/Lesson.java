package fewermore.web.teacher;

import fewermore.classroom.AssignedProblem;
import fewermore.story.Comparison;
import fewermore.story.Operation;
import fewermore.story.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One problem taught step by step on the Board. Each press of the space bar shows one thing more, and every number,
 * bar and sentence follows from the story. The slides: the story, its bars with two equations, the calculation worked
 * out in two ways, the bars again with the answer, and the check.
 *
 * <p>What is asked comes a step before what answers it, so that the class speaks first.
 *
 * @param sentences the story
 * @param lanes the two that are compared, as the story names them first
 * @param gap the step at which the gap appears, and its number
 * @param asks the Board's questions, each with the step it comes and the step that takes it away
 * @param equations two that fit, the one that finds the unknown first
 * @param worked the calculation worked out in two ways; null where its numbers can't be laid out
 * @param checks what speaks for the answer being reasonable
 * @param answerStep when the unknown becomes the answer
 * @param labelStep when the answer gets its label; @param checkStep when the check's slide begins
 * @param steps how many there are
 */
public record Lesson(
    List<Told> sentences, List<Bar> lanes, Number gap, int gapStep, int gapWidth, List<Ask> asks,
    List<Fitting> equations, WorkedOut worked, List<Said> checks, int answer, String label, int questionStep, int numbersStep,
    int barsStep, int answerStep, int checkStep, int labelStep, int reasonableStep, int steps, boolean longStory) {

  /** In hundredths of the Board's width. */
  private static final int FULL = 94;
  /** So that a number has room in the gap. */
  private static final int LEAST_GAP = 14;
  /** So that a name of no letters and a number have room in a bar, and what each letter of the name adds. */
  private static final int LEAST_BAR = 18;
  private static final double LETTER = 2.1;
  /** Two bars of which nobody has said yet which is longer. */
  static final int SAME = 70;

  private static final Pattern NUMBER = Pattern.compile("\\d+");

  public Lesson {
    sentences = List.copyOf(sentences);
    lanes = List.copyOf(lanes);
    asks = List.copyOf(asks);
    equations = List.copyOf(equations);
    checks = List.copyOf(checks);
  }

  /** A sentence in pieces. @param question whether it asks; @param knows whether a given number stands in it */
  public record Told(List<Piece> pieces, boolean question, boolean knows) {
    public String text() {
      return pieces.stream().map(Piece::text).reduce("", String::concat);
    }
  }

  /** @param given whether it is one of the two numbers the story gives */
  public record Piece(String text, boolean given) {}

  /** What stands on a bar or in the gap. @param step when it is put there */
  public record Number(int value, boolean unknown, int step) {
    public String text() {
      return unknown ? "?" : Integer.toString(value);
    }
  }

  /** @param longer whether it is the longer one; @param step when it gets its length */
  public record Bar(String who, boolean longer, int width, int step, Number number) {}

  /** @param until the step that takes it away */
  public record Ask(String text, int slide, int step, int until) {}

  /** @param filled the same line with the answer in the box */
  public record Fitting(WrittenLine line, WrittenLine filled, int step) {}

  public record Said(String text, int step) {}

  public static Lesson of(AssignedProblem problem) {
    Comparison story = problem.story();
    String text = problem.text();
    List<Told> told = told(story, problem.sentences());

    int at = 1;
    int askQuestion = ++at;
    int question = ++at;
    int askNumbers = ++at;
    int numbers = ++at;
    int bars = ++at;
    int longer = ++at;
    int shorter = ++at;
    List<Role> inOrder = rolesInOrder(story, text);
    int firstNumber = ++at;
    int secondNumber = ++at;
    int unknown = ++at;
    int askEquation = ++at;
    int first = ++at;
    int second = ++at;
    WorkedOut worked = WorkedOut.of(story, at + 1).orElse(null);
    at = worked == null ? at : worked.until() - 1;
    int answer = ++at;
    int check = ++at;
    int label = ++at;
    int askReasonable = ++at;
    List<Said> checks = new ArrayList<>();
    for (String line : checks(story)) {
      checks.add(new Said(line, ++at));
    }

    int least = (int) Math.round(LEAST_BAR + LETTER * BarsPicture.name(story, Role.SMALLER).length());
    int smallWidth = Math.max(least, Math.min(FULL - LEAST_GAP,
        Math.round((float) FULL * story.value(Role.SMALLER) / Math.max(1, story.value(Role.LARGER)))));
    List<Bar> lanes = Stream.of(Role.LARGER, Role.SMALLER)
        .sorted(Comparator.comparingInt(role -> place(text, BarsPicture.name(story, role))))
        .map(role -> new Bar(BarsPicture.name(story, role), role == Role.LARGER,
            role == Role.LARGER ? FULL : smallWidth, role == Role.LARGER ? longer : shorter,
            number(story, role, inOrder, firstNumber, secondNumber, unknown)))
        .toList();
    List<Ask> asks = List.of(
        new Ask("Find the question.", 1, askQuestion, askNumbers),
        new Ask("What do we know?", 1, askNumbers, bars),
        new Ask(whoHasMore(story, problem.sentences()), 2, bars, firstNumber),
        new Ask("Where does each number belong?", 2, firstNumber, askEquation),
        new Ask("Which equation says what the story says?", 2, askEquation, first),
        new Ask(story.answer() + " what?", 3, check, label),
        new Ask("Is it reasonable?", 3, askReasonable, Integer.MAX_VALUE));
    List<Fitting> equations = List.of(
        fitting(story, StoryEquation.of(story), first), fitting(story, another(story), second));
    boolean longStory = told.size() > 3
        || told.stream().anyMatch(sentence -> sentence.text().length() > 38);
    return new Lesson(told, lanes, number(story, Role.DIFFERENCE, inOrder, firstNumber, secondNumber, unknown), shorter,
        FULL - smallWidth, asks, equations, worked, checks, story.answer(), counted(story), question, numbers, bars, answer, check,
        label, askReasonable, at, longStory);
  }

  private static Fitting fitting(Comparison story, String line, int step) {
    return new Fitting(WrittenLine.of(line), WrittenLine.of(line.replace("□", Integer.toString(story.answer()))), step);
  }

  /** The story's own relation, with the box where the story leaves it open. */
  static String another(Comparison story) {
    int larger = story.value(Role.LARGER);
    int smaller = story.value(Role.SMALLER);
    int difference = story.value(Role.DIFFERENCE);
    return switch (story.unknown()) {
      case SMALLER -> "□ + " + difference + " = " + larger;
      case LARGER -> "□ − " + difference + " = " + smaller;
      case DIFFERENCE -> smaller + " + □ = " + larger;
    };
  }

  private static String counted(Comparison story) {
    return story.answer() == 1 ? story.thing().one() : story.thing().many();
  }

  /** True sentences a class can check the answer by; the rough one only where rounding to tens says something. */
  static List<String> checks(Comparison story) {
    int answer = story.answer();
    int larger = story.value(Role.LARGER);
    int smaller = story.value(Role.SMALLER);
    int difference = story.value(Role.DIFFERENCE);
    List<String> checks = new ArrayList<>();
    checks.add(switch (story.unknown()) {
      case LARGER -> answer + " is more than " + smaller + ".";
      case SMALLER, DIFFERENCE -> answer + " is less than " + larger + ".";
    });
    int one = story.value(story.given().get(0));
    int other = story.value(story.given().get(1));
    int rough = story.kind().operation() == Operation.ADD ? ten(one) + ten(other) : ten(one) - ten(other);
    if (one >= 10 && other >= 10 && rough > 0 && rough != answer) {
      checks.add("About " + ten(one) + " " + story.kind().operation().sign() + " " + ten(other) + " = " + rough + ".");
    }
    checks.add(switch (story.unknown()) {
      case LARGER -> answer + " − " + difference + " = " + smaller;
      case SMALLER -> answer + " + " + difference + " = " + larger;
      case DIFFERENCE -> smaller + " + " + answer + " = " + larger;
    });
    return checks;
  }

  /** To the nearest ten, halves up. */
  private static int ten(int number) {
    return (number + 5) / 10 * 10;
  }

  private static Number number(
      Comparison story, Role role, List<Role> inOrder, int first, int second, int unknown) {
    return role == story.unknown() ? new Number(story.value(role), true, unknown)
        : new Number(story.value(role), false, inOrder.get(0) == role ? first : second);
  }

  /** The two given roles as their numbers stand in the text. */
  private static List<Role> rolesInOrder(Comparison story, String text) {
    return story.given().stream()
        .sorted(Comparator.comparingInt(role -> numberPlace(text, story.value(role)))).toList();
  }

  private static int numberPlace(String text, int value) {
    Matcher number = NUMBER.matcher(text);
    while (number.find()) {
      if (Integer.parseInt(number.group()) == value) {
        return number.start();
      }
    }
    return text.length();
  }

  private static int place(String text, String name) {
    int at = text.toLowerCase(Locale.ROOT).indexOf(name.toLowerCase(Locale.ROOT));
    return at < 0 ? text.length() : at;
  }

  private static List<Told> told(Comparison story, List<String> sentences) {
    Set<Integer> given = Set.copyOf(story.given().stream().map(story::value).toList());
    List<Told> told = new ArrayList<>();
    for (String sentence : sentences) {
      List<Piece> pieces = new ArrayList<>();
      Matcher number = NUMBER.matcher(sentence);
      int from = 0;
      while (number.find()) {
        if (given.contains(Integer.parseInt(number.group()))) {
          addText(pieces, sentence.substring(from, number.start()));
          pieces.add(new Piece(number.group(), true));
          from = number.end();
        }
      }
      addText(pieces, sentence.substring(from));
      told.add(new Told(pieces, sentence.strip().endsWith("?"), pieces.stream().anyMatch(Piece::given)));
    }
    return told;
  }

  private static void addText(List<Piece> pieces, String text) {
    if (!text.isEmpty()) {
      pieces.add(new Piece(text, false));
    }
  }

  /** In the story's own words: who rode more, whose turtle is older, which is more. */
  static String whoHasMore(Comparison story, List<String> sentences) {
    String text = String.join(" ", sentences);
    String told = String.join(" ", sentences.stream().filter(sentence -> !sentence.strip().endsWith("?")).toList());
    String name = BarsPicture.name(story, Role.LARGER);
    String other = BarsPicture.name(story, Role.SMALLER);
    String names = "(?:" + Pattern.quote(name) + "|" + Pattern.quote(other) + ")";
    boolean person = !name.isEmpty() && Character.isUpperCase(name.charAt(0));
    String how = text.matches("(?s).*\\b(tall|taller)\\b.*") ? "taller"
        : text.matches("(?s).*\\b(long|longer)\\b.*") ? "longer"
        : text.matches("(?s).*\\b(old|older|younger)\\b.*") ? "older" : null;
    Matcher owned = Pattern.compile(names + "['’]s (\\p{Ll}+)").matcher(text);
    if (owned.find()) {
      return how == null ? "Which is more?" : "Whose " + owned.group(1) + " is " + how + "?";
    }
    String who = person ? "Who" : "Which";
    if (how != null) {
      return who + " is " + how + "?";
    }
    Matcher verb = Pattern.compile("(?i)\\b" + names + " (\\p{Ll}+)").matcher(told);
    boolean kinds = story.otherThing() != null;
    return !kinds && verb.find() ? who + " " + verb.group(1) + " more?" : "Which is more?";
  }

  public boolean longLabel() {
    return label.length() > 8;
  }

  public List<Ask> asksOn(int slide) {
    return asks.stream().filter(ask -> ask.slide == slide).toList();
  }

  /** The steps between which the working out stands in the place of the bars. */
  public int awayFrom() {
    return worked == null ? steps + 1 : worked.from();
  }

  public int awayUntil() {
    return worked == null ? steps + 1 : worked.until();
  }

  public int same() {
    return SAME;
  }

  /** The question, for the check. */
  public Told question() {
    return sentences.stream().filter(Told::question).findFirst().orElse(sentences.get(sentences.size() - 1));
  }

  /** The finished bars as a sentence, for those who listen. */
  public String aloud() {
    StringBuilder aloud = new StringBuilder();
    lanes.forEach(lane -> aloud.append(lane.who).append(lane.longer ? ", the longer bar: " : ", the shorter bar: ")
        .append(lane.number.unknown ? "unknown" : lane.number.text()).append(". "));
    return aloud + "The gap: " + (gap.unknown ? "unknown" : gap.text()) + ".";
  }

  /** The width of the longest line, so that a long one is set smaller. */
  public boolean longLine() {
    return equations.stream().anyMatch(each -> each.line.pieces().stream().mapToInt(piece -> piece.text().length()).sum() > 24);
  }
}
