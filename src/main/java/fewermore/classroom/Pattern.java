package fewermore.classroom;

import fewermore.marking.AnswerVerdict;
import fewermore.marking.Bars;
import fewermore.marking.BarsVerdict;
import fewermore.marking.EquationMark;
import fewermore.marking.EquationReason;
import fewermore.marking.Marks;
import fewermore.marking.Part;
import fewermore.marking.Work;
import fewermore.prediction.WayOfReasoning;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Operation;
import fewermore.story.Role;
import fewermore.story.Wording;
import fewermore.text.SourceSpan;

/**
 * What a child's work can show again and again. A pattern is read from equations (and, for
 * {@link #DIFFERENCE_AS_AMOUNT}, from bars and answers); it says what was written, not how the child is.
 *
 * <p>Work on a kind that is not {@linkplain #relevant relevant} to a pattern is never evidence for it. In
 * particular, where the wording agrees with the operation, reading the story and following the word write
 * the same equation (Lewis &amp; Mayer 1987): such work says nothing about the two.
 */
public enum Pattern {
  /** Took away where the story has to be added and the word is <i>fewer</i>. */
  TOOK_AWAY_AT_FEWER {
    @Override
    public boolean relevant(Kind kind) {
      return kind.wording() == Wording.FEWER && !kind.agrees();
    }

    @Override
    Says says(PieceOfWork work) {
      return byTheWord(work);
    }
  },
  /** Added where the story has to be taken away from and the word is <i>more</i>. */
  ADDED_AT_MORE {
    @Override
    public boolean relevant(Kind kind) {
      return kind.wording() == Wording.MORE && !kind.agrees();
    }

    @Override
    Says says(PieceOfWork work) {
      return byTheWord(work);
    }
  },
  /**
   * Took the difference for an amount: "14 fewer" became "has 14"; where the difference is asked, "how many more has Ana"
   * was answered with what Ana has.
   */
  DIFFERENCE_AS_AMOUNT {
    @Override
    public boolean relevant(Kind kind) {
      return true;
    }

    @Override
    Says says(PieceOfWork work) {
      return amountsFrom(work).says();
    }

    @Override
    public Quote quote(PieceOfWork work) {
      return amountsFrom(work);
    }
  },
  /** Wrote the subtraction with its two numbers changed about: {@code 14 − 52}. */
  TURNED_ROUND {
    @Override
    public boolean relevant(Kind kind) {
      return kind.operation() == Operation.SUBTRACT;
    }

    @Override
    Says says(PieceOfWork work) {
      return switch (structure(work)) {
        case TURNED_ROUND -> Says.SO;
        case FITS -> Says.AGAINST;
        default -> operationWritten(work) ? Says.NEITHER : Says.NOTHING;
      };
    }
  },
  /** Added where both the word and the story say to take away. */
  ADDED_ANYWAY {
    @Override
    public boolean relevant(Kind kind) {
      return kind.agrees() && kind.operation() == Operation.SUBTRACT;
    }

    @Override
    Says says(PieceOfWork work) {
      return againstWordAndStory(work);
    }
  },
  /** Took away where both the word and the story say to add. */
  TOOK_AWAY_ANYWAY {
    @Override
    public boolean relevant(Kind kind) {
      return kind.agrees() && kind.operation() == Operation.ADD;
    }

    @Override
    Says says(PieceOfWork work) {
      return againstWordAndStory(work);
    }
  },
  /** Wrote what the story says where the word pulls the other way. */
  FROM_THE_STORY {
    @Override
    public boolean relevant(Kind kind) {
      return !kind.agrees();
    }

    @Override
    Says says(PieceOfWork work) {
      if (structure(work) == EquationReason.FITS) {
        return Says.SO;
      }
      return operationWritten(work) ? Says.AGAINST : Says.NOTHING;
    }
  };

  /** Whether work on this kind can be evidence for or against the pattern. */
  public abstract boolean relevant(Kind kind);

  abstract Says says(PieceOfWork work);

  /** The child's first hand-in on the problem, with what it says; {@code NOTHING} on a kind that is not relevant. */
  public Quote quote(PieceOfWork work) {
    return equation(work, relevant(work.problem().kind()) ? says(work) : Says.NOTHING);
  }

  /** Whether following the cue word is what the pattern is about. */
  public boolean followsTheWord() {
    return this == TOOK_AWAY_AT_FEWER || this == ADDED_AT_MORE;
  }

  private static Says byTheWord(PieceOfWork work) {
    EquationMark mark = work.evidence().marks().equation();
    if (mark != null && mark.cueLed()) {
      return Says.SO;
    }
    return switch (structure(work)) {
      case FITS, TURNED_ROUND -> Says.AGAINST;
      default -> operationWritten(work) ? Says.NEITHER : Says.NOTHING;
    };
  }

  private static Says againstWordAndStory(PieceOfWork work) {
    return switch (structure(work)) {
      case OPPOSITE_OPERATION -> Says.SO;
      case FITS, TURNED_ROUND -> Says.AGAINST;
      default -> operationWritten(work) ? Says.NEITHER : Says.NOTHING;
    };
  }

  /**
   * A written operation decides, since an answer beside it may be a slip of calculation. With none, the
   * equation that only repeats the number mistaken for what is asked, then the answer that repeats it, says so. The
   * gap's number on a bar says so too, unless the equation states the story.
   */
  private static Quote amountsFrom(PieceOfWork work) {
    Comparison story = work.problem().story();
    int mistaken = takenForAnAmount(story);
    Work written = work.evidence().parts();
    Marks marks = work.evidence().marks();
    EquationReason structure = structure(work);
    if (structure == EquationReason.FITS) {
      return equation(work, Says.AGAINST);
    }
    if (marks.bars() == BarsVerdict.DIFFERENCE_AS_AMOUNT) {
      Bars bars = written.bars();
      String gap = Integer.toString(story.value(Role.DIFFERENCE));
      String bar = bars.longerBar().strip().equals(gap) ? "the longer bar" : "the shorter bar";
      return new Quote(work, Says.SO, Part.BARS, gap + " on " + bar, new SourceSpan(0, gap.length()));
    }
    if (operationWritten(work)) {
      return equation(work, Says.NEITHER);
    }
    if (structure == EquationReason.NUMBER_ONLY && onlyNumber(written.equation(), mistaken)) {
      return equation(work, Says.SO);
    }
    boolean answered = marks.answer() != null && marks.answer().verdict() != AnswerVerdict.BLANK;
    if (!answered) {
      return equation(work, Says.NOTHING);
    }
    Role repeats = marks.answer().repeats();
    Says says = repeats != null && story.value(repeats) == mistaken ? Says.SO
        : marks.answer().verdict() == AnswerVerdict.RIGHT ? Says.AGAINST : Says.NEITHER;
    return new Quote(work, says, Part.ANSWER, written.answer(), null);
  }

  /** The number that stands for what is asked where the difference and an amount are taken for each other. */
  static int takenForAnAmount(Comparison story) {
    return WayOfReasoning.TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT.predict(story).orElseThrow().answer();
  }

  private static boolean onlyNumber(String equation, int value) {
    String[] numbers = equation.replaceAll("[^0-9]+", " ").strip().split(" ");
    return numbers.length == 1 && numbers[0].equals(Integer.toString(value));
  }

  private static Quote equation(PieceOfWork work, Says says) {
    EquationMark mark = work.evidence().marks().equation();
    String text = work.evidence().parts().equation();
    String answer = work.evidence().parts().answer();
    if ((text == null || text.isBlank()) && answer != null && !answer.isBlank()) {
      return new Quote(work, says, Part.ANSWER, answer, null);
    }
    return new Quote(work, says, Part.EQUATION, text == null ? "" : text,
        says == Says.SO && mark != null && mark.reason() != EquationReason.FITS ? telling(mark, text) : null);
  }

  /** The marker's own span; else the first sign of an operation, which is what tells in these patterns. */
  private static SourceSpan telling(EquationMark mark, String text) {
    if (mark.at() != null && mark.at().length() > 0 && mark.at().end() <= text.length()) {
      return mark.at();
    }
    for (int i = 0; i < text.length(); i++) {
      if ("+-–−".indexOf(text.charAt(i)) >= 0) {
        return new SourceSpan(i, i + 1);
      }
    }
    return null;
  }

  /** The main reason, with an expression that lacks its equals sign judged as "expression = x". */
  static EquationReason structure(PieceOfWork work) {
    EquationMark mark = work.evidence().marks().equation();
    if (mark == null) {
      return EquationReason.BLANK;
    }
    return mark.reason() == EquationReason.NO_EQUALS && mark.expression() != null
        ? mark.expression() : mark.reason();
  }

  static boolean operationWritten(PieceOfWork work) {
    return switch (structure(work)) {
      case BLANK, UNREADABLE, NUMBER_ONLY -> false;
      default -> true;
    };
  }
}
