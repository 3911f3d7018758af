package fewermore.marking;

/**
 * The two bars a child drew. {@code longer} is the name of the person (or thing) whose bar is the longer
 * one, or empty while the bars are equal. A place holds a number as written, {@code x} for the unknown
 * sign, or nothing. No field is null.
 */
public record Bars(String longer, String longerBar, String shorterBar, String gap) {
  public static final Bars EMPTY = new Bars("", "", "", "");

  public Bars {
    longer = longer == null ? "" : longer;
    longerBar = longerBar == null ? "" : longerBar;
    shorterBar = shorterBar == null ? "" : shorterBar;
    gap = gap == null ? "" : gap;
  }

  public boolean blank() {
    return (longer + longerBar + shorterBar + gap).isBlank();
  }
}
