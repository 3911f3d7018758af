package fewermore.classroom;

import fewermore.marking.EquationMark;
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
 * What the first hand-ins of a class show, as of a day: statements with counts, each with the work behind it.
 * Counts only; how likely a way of reasoning is, given all of a child's work, is not said here.
 *
 * <p>The rules, in order, for each child: work that showed a pattern before and did not on the latest day is
 * {@code CHANGED}; else the pattern with the strongest counts; else, with six problems that could tell, work
 * that follows no one way; else too early to tell. A child stands in one statement, so the counts add up to
 * the class.
 *
 * @param from first day with work that was read; {@code asOf} when there was none
 * @param statements those that hold for at least one child; what needs the teacher first, most children first
 * @param grid children × kinds
 * @param pieces how many pieces of work were read
 */
public record Findings(LocalDate from, LocalDate asOf, List<Finding> statements, ClassGrid grid, int pieces) {
  /** Work older than this many days is not read: a habit of last month is no finding today. Ours. */
  public static final int DAYS_READ = 28;

  /** From this many problems on, work without a pattern is said to follow no one way. Ours. */
  public static final int ENOUGH_FOR_NO_ONE_WAY = 6;

  private static final List<Pattern> GOING_WRONG = List.of(
      Pattern.TOOK_AWAY_AT_FEWER, Pattern.ADDED_AT_MORE, Pattern.DIFFERENCE_AS_AMOUNT,
      Pattern.TURNED_ROUND, Pattern.ADDED_ANYWAY, Pattern.TOOK_AWAY_ANYWAY);

  public Findings {
    statements = List.copyOf(statements);
  }

  /** @param classList every child of the class, with work or without; work of others is not read */
  public static Findings of(Collection<Child> classList, Collection<PieceOfWork> work, LocalDate asOf) {
    Map<Child, List<PieceOfWork>> byChild = new LinkedHashMap<>();
    classList.stream().sorted(Comparator.comparing(Child::name).thenComparing(Child::id))
        .forEach(child -> byChild.put(child, new ArrayList<>()));
    List<PieceOfWork> read = work.stream()
        .filter(piece -> byChild.containsKey(piece.child()))
        .filter(piece -> !piece.evidence().day().isAfter(asOf))
        .filter(piece -> piece.evidence().day().isAfter(asOf.minusDays(DAYS_READ)))
        .sorted(Comparator.comparing((PieceOfWork piece) -> piece.evidence().at()).reversed()
            .thenComparing(piece -> piece.problem().id()))
        .toList();
    read.forEach(piece -> byChild.get(piece.child()).add(piece));
    List<Reading> readings = byChild.entrySet().stream()
        .map(entry -> new Reading(entry.getKey(), entry.getValue())).toList();
    LocalDate from = read.stream().map(piece -> piece.evidence().day()).min(LocalDate::compareTo).orElse(asOf);
    return new Findings(from, asOf, statements(readings), ClassGrid.of(byChild), read.size());
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
  private record Reading(Child child, List<PieceOfWork> work) {
    List<Quote> quotes(Pattern pattern) {
      return work.stream().filter(piece -> pattern.relevant(piece.problem().kind())).map(pattern::quote).toList();
    }

    Tally tally(Pattern pattern) {
      return Tally.of(quotes(pattern));
    }

    /** Where word and story part ways: both words together. */
    List<Quote> wordQuotes() {
      return work.stream().filter(piece -> !piece.problem().kind().agrees()).map(Findings::wordQuote).toList();
    }

    Topic topic() {
      if (changedFrom().isPresent()) {
        return Topic.CHANGED;
      }
      List<Pattern> shown = shown(work);
      if (!shown.isEmpty()) {
        return Topic.of(shown.get(0));
      }
      if (tally(Pattern.FROM_THE_STORY).holds()) {
        return Topic.FROM_THE_STORY;
      }
      return tally(Pattern.FROM_THE_STORY).of() >= ENOUGH_FOR_NO_ONE_WAY ? Topic.NO_ONE_WAY : Topic.TOO_EARLY;
    }

    /** The patterns of going wrong that hold, strongest first; of two as strong, in the order of {@link Pattern}. */
    List<Pattern> shown(List<PieceOfWork> some) {
      Reading reading = new Reading(child, some);
      return GOING_WRONG.stream()
          .filter(pattern -> reading.said(pattern).holds())
          .sorted(Comparator.comparing((Pattern pattern) -> reading.said(pattern).strength()).reversed()
              .thenComparing(Comparator.naturalOrder()))
          .toList();
    }

    /**
     * For a cue word: the counts at this word when they hold by themselves, else those at both words. Nothing
     * when the child also writes the other operation where word and story agree: then it is not the word.
     */
    Tally said(Pattern pattern) {
      Tally alone = tally(pattern);
      if (!pattern.followsTheWord() || alone.so() == 0) {
        return alone;
      }
      if (oneOperationWhateverTheWord(pattern)) {
        return Tally.NONE;
      }
      Tally both = Tally.of(wordQuotes());
      boolean better = both.strength().compareTo(alone.strength()) > 0;
      return better ? both : alone;
    }

    private boolean oneOperationWhateverTheWord(Pattern pattern) {
      Tally anyway = tally(pattern == Pattern.TOOK_AWAY_AT_FEWER ? Pattern.TOOK_AWAY_ANYWAY : Pattern.ADDED_ANYWAY);
      return anyway.so() >= 2 && anyway.so() * 2 >= anyway.of();
    }

    /** The pattern that held before the latest day, when at least two problems of that day all speak against. */
    Optional<Pattern> changedFrom() {
      for (Pattern pattern : GOING_WRONG) {
        List<Quote> telling = quotes(pattern).stream().filter(quote -> quote.says().tells()).toList();
        if (telling.isEmpty()) {
          continue;
        }
        LocalDate last = Tally.lastDay(telling);
        List<Quote> latest = telling.stream().filter(quote -> quote.day().equals(last)).toList();
        List<PieceOfWork> before = work.stream().filter(piece -> piece.evidence().day().isBefore(last)).toList();
        boolean nowAgainst = latest.size() >= 2 && latest.stream().allMatch(quote -> quote.says() == Says.AGAINST);
        if (nowAgainst && shown(before).contains(pattern)) {
          return Optional.of(pattern);
        }
      }
      return Optional.empty();
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
      for (PieceOfWork piece : work) {
        Quote quote = topic.followsTheWord() ? wordQuote(piece)
            : topic.pattern().orElse(Pattern.FROM_THE_STORY).quote(piece);
        if (topic.relevant(piece.problem().kind())) {
          evidence.add(quote);
        } else {
          apart.add(quote);
        }
      }
      Tally counted = topic.pattern().map(this::said).orElse(Tally.of(evidence));
      // What is counted beside a name is what is shown beside it: the work at both words.
      Tally tally = topic.followsTheWord() ? Tally.of(evidence) : counted;
      if (topic == Topic.CHANGED) {
        return new ChildFinding(child, Strength.CHANGED, tally, evidence, apart, changedFrom().orElseThrow(), List.of());
      }
      Strength strength = topic.pattern().isPresent() ? counted.strength() : Strength.TOO_EARLY;
      List<Pattern> also = shown(work).stream()
          .filter(pattern -> Topic.of(pattern) != topic).toList();
      return new ChildFinding(child, strength, tally, evidence, apart, null, also);
    }
  }

  private static Quote wordQuote(PieceOfWork piece) {
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
