package fewermore.classroom;

import fewermore.marking.EquationMark;
import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.ReasoningTable;
import fewermore.reasoning.Statement;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the first hand-ins of a class show, as of a day: statements, each with the work behind it. What is said of a
 * child, and how surely, comes from the estimate of her way of reasoning ({@link fewermore.reasoning.Estimate}); the
 * counts beside it are for the reader, who must see them. A child stands in one statement, so they add up to the class.
 *
 * @param from first day with work that was read; {@code asOf} when there was none
 * @param statements those that hold for at least one child; what needs the teacher first, most children first
 * @param grid children × kinds
 * @param pieces how many pieces of work were read
 * @param children every child of the class, by name
 */
public record Findings(LocalDate from, LocalDate asOf, List<Finding> statements, ClassGrid grid, int pieces,
    List<ChildReasoning> children) {
  /** Work older than this many days is not read: a habit of last month is no finding today. Ours. */
  public static final int DAYS_READ = 28;

  private static final List<Pattern> GOING_WRONG = List.of(
      Pattern.TOOK_AWAY_AT_FEWER, Pattern.ADDED_AT_MORE, Pattern.DIFFERENCE_AS_AMOUNT,
      Pattern.TURNED_ROUND, Pattern.ADDED_ANYWAY, Pattern.TOOK_AWAY_ANYWAY);

  public Findings {
    statements = List.copyOf(statements);
    children = List.copyOf(children);
  }

  /** @param classList every child of the class, with work or without; work of others is not read */
  public static Findings of(Collection<Child> classList, Collection<PieceOfWork> work, LocalDate asOf) {
    return of(classList, work, asOf, TeacherWord.NONE, ReasoningTable.standard());
  }

  /** @param word what the teacher took out of the evidence or put aside */
  public static Findings of(Collection<Child> classList, Collection<PieceOfWork> work, LocalDate asOf,
      TeacherWord word, ReasoningTable table) {
    return of(classList, work, asOf, word, table, new KeptReasonings());
  }

  /** @param kept what was worked out before */
  public static Findings of(Collection<Child> classList, Collection<PieceOfWork> work, LocalDate asOf,
      TeacherWord word, ReasoningTable table, KeptReasonings kept) {
    List<ChildReasoning> children = ChildReasoning.ofClass(classList, work, asOf, DAYS_READ, word, table, kept);
    List<Reading> readings = children.stream().map(Reading::new).toList();
    List<PieceOfWork> read = children.stream().flatMap(child -> child.counted().stream()).toList();
    LocalDate from = read.stream().map(piece -> piece.evidence().day()).min(LocalDate::compareTo).orElse(asOf);
    Map<Child, List<PieceOfWork>> byChild = new LinkedHashMap<>();
    children.forEach(child -> byChild.put(child.child(), child.counted()));
    return new Findings(from, asOf, statements(readings), ClassGrid.of(byChild), read.size(), children);
  }

  public Optional<ChildReasoning> about(Child child) {
    return children.stream().filter(each -> each.child().equals(child)).findFirst();
  }

  public Optional<Finding> about(Topic topic) {
    return statements.stream().filter(finding -> finding.topic() == topic).findFirst();
  }

  private static List<Finding> statements(List<Reading> readings) {
    Map<Topic, List<ChildFinding>> said = new EnumMap<>(Topic.class);
    Map<Topic, List<ChildFinding>> early = new EnumMap<>(Topic.class);
    for (Reading reading : readings) {
      Topic topic = reading.topic();
      said.computeIfAbsent(topic, none -> new ArrayList<>()).add(reading.finding(topic));
      if (topic == Topic.TOO_EARLY) {
        reading.pointsTo().ifPresent(pattern -> early.computeIfAbsent(Topic.of(pattern), none -> new ArrayList<>())
            .add(reading.finding(Topic.of(pattern))));
      }
    }
    List<Finding> statements = new ArrayList<>();
    said.forEach((topic, children) -> {
      children.sort(Comparator.comparing(ChildFinding::strength).reversed()
          .thenComparing(child -> -child.tally().so()).thenComparing(child -> child.child().name()));
      statements.add(new Finding(topic, children, early.getOrDefault(topic, List.of())));
    });
    statements.sort(Comparator
        .comparing((Finding finding) -> finding.topic().compareTo(Topic.CHANGED) < 0
            ? 0 : finding.topic().ordinal())
        .thenComparing(finding -> -finding.children().size())
        .thenComparing(Finding::topic));
    return statements;
  }

  /** One child's work, the latest first, read for every pattern. */
  private record Reading(ChildReasoning reasoning) {
    List<PieceOfWork> work() {
      return reasoning.counted();
    }

    List<Quote> quotes(Pattern pattern) {
      return work().stream().filter(piece -> pattern.relevant(piece.problem().kind())).map(pattern::quote).toList();
    }

    Tally tally(Pattern pattern) {
      return Tally.of(quotes(pattern));
    }

    Topic topic() {
      Statement says = reasoning.says();
      if (reasoning.setAside().isPresent()) {
        return Topic.PUT_ASIDE;
      }
      return switch (says.strength()) {
        case TOO_EARLY -> Topic.TOO_EARLY;
        case MIXED -> Topic.NO_ONE_WAY;
        case CHANGED -> Topic.CHANGED;
        case LOOKS_AS_IF, CLEAR -> topic(says.way());
      };
    }

    Topic topic(WayOfReasoning way) {
      return switch (way) {
        case FROM_THE_STORY -> Topic.FROM_THE_STORY;
        case BY_THE_CUE_WORD -> atFewer() ? Topic.TOOK_AWAY_AT_FEWER : Topic.ADDED_AT_MORE;
        case ALWAYS_ADDS -> Topic.ADDED_ANYWAY;
        case ALWAYS_TAKES_AWAY -> Topic.TOOK_AWAY_ANYWAY;
        case TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT -> Topic.DIFFERENCE_AS_AMOUNT;
        case TURNS_SUBTRACTION_ROUND -> Topic.TURNED_ROUND;
        case NO_STEADY_WAY -> Topic.NO_ONE_WAY;
      };
    }

    /**
     * Whether the work at <i>fewer</i> shows it, since it began to: then that is said, and the lead tells who did the same
     * with <i>more</i>.
     */
    private boolean atFewer() {
      Tally fewer = Tally.of(reasoning.showing(quotes(Pattern.TOOK_AWAY_AT_FEWER)));
      return fewer.so() > 0 && fewer.so() * 2 >= fewer.of();
    }

    /** With too little work to say anything: the one pattern all of it points to, if it does. */
    Optional<Pattern> pointsTo() {
      return GOING_WRONG.stream()
          .filter(pattern -> tally(pattern).so() > 0 && tally(pattern).so() == tally(pattern).of())
          .max(Comparator.comparing(pattern -> tally(pattern).so()));
    }

    ChildFinding finding(Topic topic) {
      List<Quote> evidence = new ArrayList<>();
      List<Quote> apart = new ArrayList<>();
      for (PieceOfWork piece : work()) {
        Quote quote = topic.followsTheWord() ? wordQuote(piece)
            : topic.pattern().orElse(Pattern.FROM_THE_STORY).quote(piece);
        if (topic.relevant(piece.problem().kind())) {
          evidence.add(quote);
        } else {
          apart.add(quote);
        }
      }
      List<Pattern> also = GOING_WRONG.stream()
          .filter(pattern -> Topic.of(pattern) != topic && tally(pattern).holds()).toList();
      // What came before the work began to show it is shown and not counted: it was another way then.
      Tally tally = Tally.of(reasoning.showing(evidence));
      return new ChildFinding(reasoning.child(), reasoning.says().strength(), tally, evidence, apart, also,
          reasoning);
    }
  }

  static Quote wordQuote(PieceOfWork piece) {
    return Pattern.TOOK_AWAY_AT_FEWER.relevant(piece.problem().kind())
        ? Pattern.TOOK_AWAY_AT_FEWER.quote(piece) : Pattern.ADDED_AT_MORE.quote(piece);
  }

  /** Whether the first hand-in's equation states the story. */
  static boolean fits(PieceOfWork piece) {
    EquationMark mark = piece.evidence().marks().equation();
    return mark != null && mark.fits();
  }

  /** The kinds in the order of pages: where word and story part ways, then where they agree. */
  public static final List<Kind> KINDS = List.of(
      Kind.LARGER_FEWER, Kind.SMALLER_MORE, Kind.DIFFERENCE_MORE,
      Kind.SMALLER_FEWER, Kind.LARGER_MORE, Kind.DIFFERENCE_FEWER);
}
