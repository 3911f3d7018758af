package fewermore.web.teacher;

import java.util.ArrayList;
import java.util.List;

/**
 * What every page of the Board has around its content.
 *
 * @param path where this page is, without its step
 * @param step from 1
 * @param steps how many there are
 * @param before the page before the first step, or null; @param next the page after the last step, or null
 * @param problems how many problems of today can be taught
 * @param stage whether this is the window on the second screen: no controls there
 */
public record BoardFrame(
    String path, int step, int steps, String before, String next, int problems, boolean stage, boolean dark, int size) {

  /** A picture of the Board's text height in tenths of a per cent of the picture's height: the least and the most. */
  public static final int LEAST = 60;
  public static final int MOST = 100;
  /** Height of a small x of Andika in its font size, measured in Chromium: 0.4872. */
  private static final double SMALL_LETTER = 0.487;
  /** From this size on the bars leave room for the question only. */
  private static final int BIG = 75;

  /** The same page at another step. */
  public String at(int other) {
    return path + (path.contains("?") ? "&" : "?") + "step=" + other;
  }

  public String back() {
    return step > 1 ? at(step - 1) : before;
  }

  public String onward() {
    return step < steps ? at(step + 1) : next;
  }

  /** The body's classes: size and light. */
  public String look() {
    return "b-" + size + (size > BIG ? " big" : "") + (dark ? " board-dark" : "") + (stage ? " on-stage" : "");
  }

  public List<Integer> numbers() {
    List<Integer> numbers = new ArrayList<>();
    for (int number = 1; number <= problems; number++) {
      numbers.add(number);
    }
    return numbers;
  }

  /** The class of a part that comes at a step and keeps its place before. */
  public String later(int from) {
    return step < from ? "later" : "";
  }

  /** The class of a part that stands only from one step to another, and takes no room otherwise. */
  public String only(int from, int until) {
    return step < from || step >= until ? "out" : "";
  }

  /** The same for a part that leaves in between and comes back. */
  public String only(int from, int until, int awayFrom, int awayUntil) {
    return step >= awayFrom && step < awayUntil ? "out" : only(from, until);
  }

  public String from(int from) {
    return only(from, Integer.MAX_VALUE);
  }

  public boolean here(String other) {
    return path.equals(other);
  }

  /**
   * The text height by the rule that the height of a small letter is 1/200 of the farthest viewer's distance (AVIXA
   * V202.01, basic decision making, read second-hand), for the Board's face, {@link #SMALL_LETTER}.
   *
   * @param distance of the back row; @param height of the picture, in the same unit
   * @return tenths of a per cent of the picture's height, from {@link #LEAST} to {@link #MOST}
   */
  public static int size(double distance, double height) {
    return (int) Math.max(LEAST, Math.min(MOST, Math.ceil(distance / height * 0.5 / SMALL_LETTER * 10 - 1e-9)));
  }
}
