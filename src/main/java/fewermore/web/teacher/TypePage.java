package fewermore.web.teacher;

import fewermore.calculation.SlipRule;
import fewermore.prediction.Arrangements;
import fewermore.prediction.Prediction;
import fewermore.prediction.Predictions;
import fewermore.prediction.WayOfReasoning;
import fewermore.problem.Cleanness;
import fewermore.problem.NotSeparated;
import fewermore.problem.NumberRange;
import fewermore.problem.Regrouping;
import fewermore.problem.TypedProblem;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Role;
import fewermore.story.Wording;
import fewermore.text.SourceSpan;
import fewermore.wording.Correction;
import fewermore.wording.ReadText;
import fewermore.wording.TypedText;
import fewermore.wording.Writing;
import fewermore.wording.WrittenText;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A problem as the teacher types it. {@code pages/teacher/type.html}; what changes while she types is the fragment
 * {@code seen} of it.
 *
 * <p>Form, to {@code POST /plan/look} and {@code POST /plan/type}: {@code text}; the roles, good for the text in
 * {@code roles-of}: {@code use-0} …, {@code unknown}, {@code wording}, {@code larger}, {@code smaller}, {@code one},
 * {@code many}, {@code other-one}, {@code other-many}, with {@code hand} {@code yes} once she has set one;
 * {@code tap}: the role she tapped.
 *
 * @param day for which day, ISO
 * @param into the set it goes into, or 0 for one to be made
 * @param problem the problem that is edited, or 0
 * @param withWork how many children have handed in work on it
 * @param changes how many children's marks will change, asked before they do; -1 while nothing is asked
 * @param trouble a sentence about the last try, or null
 * @param inSpanish the words whose Spanish she is asked for
 */
public record TypePage(
    String day, String dayWords, long into, long problem, int withWork, int changes, ReadText read, Correction roles,
    String trouble, SpanishAsked inSpanish) {

  /** Where no Spanish is asked for. */
  public TypePage(String day, String dayWords, long into, long problem, int withWork, int changes, ReadText read,
      Correction roles, String trouble) {
    this(day, dayWords, into, problem, withWork, changes, read, roles, trouble, SpanishAsked.NOTHING);
  }

  /**
   * A stretch of the text.
   *
   * @param look class of its mark: {@code longer}, {@code shorter}, {@code gap}, {@code word}, {@code unknown},
   *     {@code extra}, {@code place} (what a text was declined for), or empty
   * @param caption what it is taken for, or empty
   * @param tap what tapping it changes, or empty
   */
  public record Run(String text, String look, String caption, String tap) {}

  /** A use a number may be put to, with its word. */
  public record Choice(String id, String word) {}

  /** Ways of reasoning that write the same for this problem. */
  public record Way(List<String> names, WrittenLine equation, int answer, String note) {}

  public boolean understood() {
    return read.match(new ReadText.Cases<>() {
      @Override
      public Boolean understood(ReadText.Understood understood) {
        return true;
      }

      @Override
      public Boolean declined(ReadText.Declined declined) {
        return false;
      }
    });
  }

  private ReadText.Understood sure() {
    return (ReadText.Understood) read;
  }

  private Comparison story() {
    return sure().story();
  }

  public boolean empty() {
    return read.text().isBlank();
  }

  public String text() {
    return read.text();
  }

  public boolean byHand() {
    return understood() && sure().byHand();
  }

  /** The declined text's three sentences; null when it was understood or nothing is typed yet. */
  public List<String> declined() {
    return understood() || empty() ? null : read.match(new ReadText.Cases<>() {
      @Override
      public List<String> understood(ReadText.Understood understood) {
        return null;
      }

      @Override
      public List<String> declined(ReadText.Declined declined) {
        return List.of(declined.found(), declined.expected(), declined.advice());
      }
    });
  }

  // ---- the text, a sentence a line, each part marked ----

  private record Mark(SourceSpan at, String look, String caption, String tap) {}

  public List<List<Run>> lines() {
    List<Mark> marks = marks();
    List<List<Run>> lines = new ArrayList<>();
    for (SourceSpan sentence : TypedText.sentences(read.text())) {
      lines.add(runs(sentence, marks));
    }
    return lines;
  }

  private List<Run> runs(SourceSpan sentence, List<Mark> marks) {
    List<Run> runs = new ArrayList<>();
    int here = sentence.start();
    for (Mark mark : marks) {
      int start = Math.max(mark.at.start(), here);
      int end = Math.min(mark.at.end(), sentence.end());
      if (start >= end || mark.at.start() >= sentence.end()) {
        continue;
      }
      if (start > here) {
        runs.add(new Run(read.text().substring(here, start), "", "", ""));
      }
      runs.add(new Run(read.text().substring(start, end), mark.look, mark.caption, mark.tap));
      here = end;
    }
    if (here < sentence.end()) {
      runs.add(new Run(read.text().substring(here, sentence.end()), "", "", ""));
    }
    return runs;
  }

  private List<Mark> marks() {
    List<Mark> marks = read.match(new ReadText.Cases<>() {
      @Override
      public List<Mark> understood(ReadText.Understood understood) {
        return understoodMarks(understood);
      }

      @Override
      public List<Mark> declined(ReadText.Declined declined) {
        List<Mark> found = new ArrayList<>();
        for (int i = 0; i < declined.numbers().size(); i++) {
          found.add(number(i));
        }
        declined.at().stream().filter(at -> at.length() > 0 && at.length() < declined.text().length())
            .filter(at -> found.stream().noneMatch(mark -> mark.at.start() < at.end() && at.start() < mark.at.end()))
            .forEach(at -> found.add(new Mark(at, "place", "", "")));
        return found;
      }
    });
    List<Mark> sorted = new ArrayList<>(marks);
    sorted.sort(Comparator.comparingInt(mark -> mark.at.start()));
    return sorted;
  }

  private List<Mark> understoodMarks(ReadText.Understood understood) {
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < understood.numbers().size(); i++) {
      marks.add(number(i));
    }
    for (ReadText.Place place : understood.places()) {
      switch (place.part()) {
        case LARGER_HOLDER -> marks.add(new Mark(place.at(), "longer", "has more", "turn"));
        case SMALLER_HOLDER -> marks.add(new Mark(place.at(), "shorter", "has fewer", "turn"));
        case COMPARING_WORD -> marks.add(new Mark(place.at(), "word", "the word", "wording"));
        case QUESTION -> marks.add(new Mark(asking(place.at()), "unknown", asked(), "unknown"));
        default -> { }
      }
    }
    List<Mark> apart = new ArrayList<>();
    for (Mark mark : marks) {
      if (apart.stream().noneMatch(other -> other.at.start() < mark.at.end() && mark.at.start() < other.at.end())) {
        apart.add(mark);
      }
    }
    return apart;
  }

  /** "How many" at the head of the question: the two words that ask. */
  private SourceSpan asking(SourceSpan question) {
    String text = question.of(read.text());
    java.util.regex.Matcher words = ASKS.matcher(text);
    return words.find()
        ? new SourceSpan(question.start() + words.start(), question.start() + words.end())
        : new SourceSpan(question.start(), Math.min(question.end(), question.start() + Math.max(1, text.indexOf(' '))));
  }

  private static final java.util.regex.Pattern ASKS =
      java.util.regex.Pattern.compile("(?i)\\b(how (many|much)|how \\p{L}+|what)\\b");

  private String asked() {
    return switch (story().unknown()) {
      case LARGER -> "asked: the larger";
      case SMALLER -> "asked: the smaller";
      case DIFFERENCE -> "asked: the gap";
    };
  }

  private Mark number(int index) {
    Correction.Use use = roles.numbers().get(index);
    String caption = switch (use) {
      case LARGER -> "the larger";
      case SMALLER -> "the smaller";
      case DIFFERENCE -> "the gap";
      case EXTRA -> "not part of it";
    };
    return new Mark(read.numbers().get(index).at(), look(use), caption, "number-" + index);
  }

  private static String look(Correction.Use use) {
    return switch (use) {
      case LARGER -> "longer";
      case SMALLER -> "shorter";
      case DIFFERENCE -> "gap";
      case EXTRA -> "extra";
    };
  }

  // ---- the roles as fields ----

  /** A number and its use. */
  public record NumberField(int index, int value, String use) {}

  public List<NumberField> numberFields() {
    List<NumberField> fields = new ArrayList<>();
    for (int i = 0; i < read.numbers().size(); i++) {
      fields.add(new NumberField(i, read.numbers().get(i).value(), roles.numbers().get(i).id()));
    }
    return fields;
  }

  public List<Choice> uses() {
    return List.of(new Choice("larger", "the larger amount"), new Choice("smaller", "the smaller amount"),
        new Choice("difference", "the gap"), new Choice("extra", "not part of it"));
  }

  public List<Choice> unknowns() {
    return List.of(new Choice("", "not said"), new Choice("larger", "the larger amount"),
        new Choice("smaller", "the smaller amount"), new Choice("difference", "the gap"));
  }

  public List<Choice> wordings() {
    return List.of(new Choice("", "not said"), new Choice("more", "more, longer, older …"),
        new Choice("fewer", "fewer, less, shorter …"), new Choice("difference", "what is the difference"));
  }

  public String unknown() {
    return roles.unknown() == null ? "" : roles.unknown().id();
  }

  public String wording() {
    return roles.wording() == null ? "" : roles.wording().id();
  }

  public String larger() {
    return blank(roles.persons().larger());
  }

  public String smaller() {
    return blank(roles.persons().smaller());
  }

  public String one() {
    return roles.thing() == null ? "" : roles.thing().one();
  }

  public String many() {
    return roles.thing() == null ? "" : roles.thing().many();
  }

  public String otherOne() {
    return roles.otherThing() == null ? "" : roles.otherThing().one();
  }

  public String otherMany() {
    return roles.otherThing() == null ? "" : roles.otherThing().many();
  }

  private static String blank(String name) {
    return name == null ? "" : name;
  }

  // ---- the key ----

  public KindWords kind() {
    return KindWords.of(story());
  }

  public BarsPicture bars() {
    return BarsPicture.of(story());
  }

  public WrittenLine equation() {
    return WrittenLine.of(StoryEquation.of(story()));
  }

  /** The other seven equations that fit. */
  public List<WrittenLine> alsoFit() {
    String solution = StoryEquation.of(story());
    return Arrangements.of(story()).stream().filter(each -> !each.equals(solution)).map(WrittenLine::of).toList();
  }

  public int answer() {
    return story().answer();
  }

  public String label() {
    return story().thing().many();
  }

  /** What the calculation needs, for example "Taking 8 from 2 needs a ten to be traded."; empty when nothing. */
  public String regroups() {
    if (!Regrouping.isNeeded(story().amounts())) {
      return "";
    }
    if (story().unknown() == Role.LARGER) {
      int first = story().value(Role.SMALLER) % 10;
      int second = story().value(Role.DIFFERENCE) % 10;
      return "Adding " + first + " + " + second + " makes a new ten.";
    }
    int second = story().value(story().unknown() == Role.SMALLER ? Role.DIFFERENCE : Role.SMALLER) % 10;
    return "Taking " + second + " from " + story().value(Role.LARGER) % 10 + " needs a ten to be traded.";
  }

  public boolean beyond() {
    return story().amounts().total() > NumberRange.WITHIN_100.limit();
  }

  // ---- what it can tell ----

  public List<Way> ways() {
    List<Way> ways = new ArrayList<>();
    for (List<Prediction> group : Predictions.of(story()).byEquation()) {
      List<WayOfReasoning> same = group.stream().map(Prediction::way).toList();
      ways.add(new Way(same.stream().map(way -> way.id().replace('-', ' ')).toList(),
          WrittenLine.of(group.get(0).equation()), group.get(0).answer(), note(same)));
    }
    return ways;
  }

  private String note(List<WayOfReasoning> same) {
    if (same.size() == 1) {
      return "Only this way writes it.";
    }
    String cannot = "Can’t tell these " + (same.size() == 2 ? "two" : same.size() == 3 ? "three" : same.size())
        + " apart.";
    return cannot + Predictions.toTellApart(same, story()).map(kind -> " " + can(kind)).orElse("");
  }

  private static String can(Kind kind) {
    String word = kind.wording() == Wording.MORE ? "more" : "fewer";
    return "A problem with “" + word + "” and the " + (kind.unknown() == Role.DIFFERENCE ? "gap" : kind.unknown().id())
        + " asked can.";
  }

  /** A plain warning where the story and the word lead to the same equation; empty elsewhere. */
  public String warning() {
    return story().kind().agrees()
        ? "The word and the story lead to the same equation here: this problem can’t tell who reads the story from who "
            + "follows the word."
        : "";
  }

  /** Pairs of answers its numbers can't tell apart; empty when they are clean or go beyond 100. */
  public List<String> notSeparated() {
    return beyond() ? List.of() : Cleanness.notSeparated(story().amounts(), story().unknown()).stream()
        .map(NotSeparated::says).toList();
  }

  /** Her text with better numbers, or empty. */
  public String better() {
    return new TypedProblem(sure()).withBetterNumbers().orElse("");
  }

  // ---- Spanish ----

  /** The same story in Spanish, or null. */
  public List<String> spanish() {
    Writing writing = new TypedProblem(sure()).spanish(inSpanish.words());
    return writing instanceof WrittenText text ? text.sentences().stream().map(each -> each.text()).toList() : null;
  }

  public boolean edits() {
    return problem != 0;
  }

  /** Slips of calculation the answers of this problem would show, named for the reader of the key. */
  public List<String> slips() {
    Comparison story = story();
    int first = story.value(story.unknown() == Role.LARGER ? Role.SMALLER : Role.LARGER);
    int second = story.value(story.unknown() == Role.DIFFERENCE ? Role.SMALLER : Role.DIFFERENCE);
    List<String> slips = new ArrayList<>();
    for (SlipRule rule : List.of(SlipRule.SMALLER_FROM_LARGER, SlipRule.BORROW_TENS_LEFT, SlipRule.CARRIED_TEN_DROPPED)) {
      rule.predicts(first, story.kind().operation(), second)
          .ifPresent(number -> slips.add(number + ": a child who " + rule.says()));
    }
    return slips;
  }

  /** For a reader who listens: what became of the text, in one sentence. */
  public String status() {
    if (empty()) {
      return "";
    }
    return understood() ? kind().sentence() + ", " + kind().word() + ". The answer is " + answer() + " " + label() + "."
        : String.join(" ", Optional.ofNullable(declined()).orElse(List.of()));
  }
}
