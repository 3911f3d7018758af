package fewermore.marking;

/**
 * What a child wrote on one problem, exactly as written. A part that was not asked is null and gets no
 * mark; a part left empty is the empty text (for bars, {@link Bars#EMPTY}) and is marked {@code blank}.
 */
public record Work(
    String equation, String answer, String label, Bars bars, String estimate, Reading reading, StrategyWork strategy) {
  public static final Work NOT_ASKED = new Work(null, null, null, null, null, null, null);

  /** Work on a problem where no strategy was asked. */
  public Work(String equation, String answer, String label, Bars bars, String estimate, Reading reading) {
    this(equation, answer, label, bars, estimate, reading, null);
  }

  /** Work on a problem where the reading was not asked. */
  public Work(String equation, String answer, String label, Bars bars, String estimate, StrategyWork strategy) {
    this(equation, answer, label, bars, estimate, null, strategy);
  }

  /** Work on a problem where neither the reading nor a strategy was asked. */
  public Work(String equation, String answer, String label, Bars bars, String estimate) {
    this(equation, answer, label, bars, estimate, null, null);
  }
}
