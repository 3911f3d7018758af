package fewermore.classroom;

import fewermore.marking.AnswerMark;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.BarsVerdict;
import fewermore.marking.EquationMark;
import fewermore.marking.EquationReason;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marks;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;

/** Made-up work with made-up marks: what is read from marks is tested apart from what gives them. */
public final class Made {
  public static final LocalDate MONDAY = LocalDate.of(2026, 11, 16);
  private static int next = 1;

  private Made() {}

  public static Child child(String name) {
    return new Child(name.hashCode(), 1, name, "leaf", "moss", "en");
  }

  /** Larger 43, smaller 28, difference 15. */
  public static AssignedProblem problem(long id, Kind kind) {
    var story = new Comparison(new Persons("Theo", "Mara"), new Thing("shell", "shells"), null, List.of(),
        new Relation(43, 28, 15), kind.unknown(), kind.wording(), List.of());
    return new AssignedProblem(id, story, "beach", 7, List.of("Mara has some shells.", "How many?"), List.of());
  }

  /** An equation with its reason; {@code +word} after the reason's id makes it cue-led. */
  public static PieceOfWork work(String child, long problem, Kind kind, LocalDate day, String equation, String reason) {
    return work(child, problem, kind, day, equation, reason, AnswerMark.of(AnswerVerdict.OTHER), "99", BarsVerdict.BLANK);
  }

  public static PieceOfWork work(String child, long problem, Kind kind, LocalDate day, String equation,
      String reason, AnswerMark answer, String answered, BarsVerdict bars) {
    boolean cue = reason.endsWith("+word");
    EquationReason main = reason(cue ? reason.substring(0, reason.length() - 5) : reason);
    var mark = new EquationMark(main, null, false, cue, false, false, null, null);
    return new PieceOfWork(child(child), problem(problem, kind), List.of(handIn(day, equation, answered,
        new Marks(mark, answer, LabelVerdict.NAMES_IT, bars, null))));
  }

  public static HandIn handIn(LocalDate day, String equation, String answer, Marks marks) {
    Instant at = day.atTime(10, 0).toInstant(ZoneOffset.UTC).plusSeconds(next++);
    return new HandIn("w" + next, "p", 1, at, day, "s", "t", false, null,
        new Work(equation, answer, "shells", fewermore.marking.Bars.EMPTY, null), marks);
  }

  public static AnswerMark repeatsTheDifference() {
    return new AnswerMark(AnswerVerdict.STORY_NUMBER, Role.DIFFERENCE, List.of());
  }

  private static EquationReason reason(String id) {
    for (EquationReason reason : EquationReason.values()) {
      if (reason.id().equals(id)) {
        return reason;
      }
    }
    throw new IllegalArgumentException(id);
  }
}
