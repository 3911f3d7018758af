package fewermore.marking;

/**
 * What a child wrote on one problem, exactly as written. A part that was not asked is null and gets no
 * mark; a part left empty is the empty text (for bars, {@link Bars#EMPTY}) and is marked {@code blank}.
 */
public record Work(String equation, String answer, String label, Bars bars, String estimate) {
  public static final Work NOT_ASKED = new Work(null, null, null, null, null);
}
