package fewermore.calculation;

import java.util.List;
import java.util.OptionalInt;

/** What lies on the table, or stands on the paper, after some steps. Immutable; equal states look equal. */
public sealed interface State permits Mat, NumberLine, Expanded {
  Calculation calculation();

  /** What a step makes of it. A step that can't be done changes nothing. */
  Moved after(Step step);

  /** The picture in words, in the order of looking: for a screen reader and for the list of steps. */
  List<Said> says();

  /** The number it comes to so far: the one written, or else the one to be seen; empty when there is none yet. */
  OptionalInt result();

  /** Whether it is worked out right to the end, whatever the single steps were. */
  boolean complete();

  /** Whether the steps show a slip that makes the number it comes to. Asked only of rules that predict it. */
  boolean shows(SlipRule rule);

  /** How a step stands to arithmetic. */
  enum Check {
    RIGHT,
    WRONG,
    NOT_POSSIBLE
  }

  /** A state, and how the step that led to it stands to arithmetic. */
  record Moved(State state, Check check) {}
}
