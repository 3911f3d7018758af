package fewermore.records;

import fewermore.classroom.HandIn;
import fewermore.classroom.PieceOfWork;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.BarsVerdict;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marks;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * One child's work week by week (weeks begin on Monday). Work done with help is counted apart and in nothing else.
 *
 * @param weeks those with work, oldest first
 */
public record Weeks(List<Week> weeks) {
  public Weeks {
    weeks = List.copyOf(weeks);
  }

  /** How often a part was as it should be, of the tries in which it was asked. */
  public record Count(int good, int of) {
    public String words() {
      return of == 0 ? "" : good + " of " + of;
    }
  }

  /** The parts of one try of each problem. */
  public record Parts(Count bars, Count equation, Count answer, Count label) {}

  /** @param monday its first day; @param problems done without help; @param withHelp further problems, done with help */
  public record Week(LocalDate monday, LocalDate lastDay, int problems, int withHelp, Parts first, Parts last) {}

  public static Weeks of(Collection<PieceOfWork> work) {
    TreeMap<LocalDate, List<PieceOfWork>> byWeek = new TreeMap<>();
    for (PieceOfWork piece : work) {
      LocalDate monday = piece.evidence().day().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
      byWeek.computeIfAbsent(monday, none -> new ArrayList<>()).add(piece);
    }
    List<Week> weeks = new ArrayList<>();
    byWeek.forEach((monday, pieces) -> {
      List<PieceOfWork> own = pieces.stream().filter(piece -> !piece.withHelp()).toList();
      LocalDate last = pieces.stream().map(piece -> piece.evidence().day()).max(LocalDate::compareTo).orElse(monday);
      weeks.add(new Week(monday, last, own.size(), pieces.size() - own.size(),
          parts(own.stream().map(PieceOfWork::evidence).toList()), parts(own.stream().map(PieceOfWork::last).toList())));
    });
    return new Weeks(weeks);
  }

  static Parts parts(Collection<HandIn> tries) {
    return new Parts(
        count(tries, marks -> marks.bars() != null, marks -> marks.bars() == BarsVerdict.FITS),
        count(tries, marks -> marks.equation() != null, marks -> marks.equation().fits()),
        count(tries, marks -> marks.answer() != null, marks -> marks.answer().verdict() == AnswerVerdict.RIGHT),
        count(tries, marks -> marks.label() != null, marks -> marks.label() == LabelVerdict.NAMES_IT));
  }

  private static Count count(Collection<HandIn> tries, Predicate<Marks> asked, Predicate<Marks> good) {
    List<Marks> marks = tries.stream().map(HandIn::marks).filter(asked).toList();
    return new Count((int) marks.stream().filter(good).count(), marks.size());
  }
}
