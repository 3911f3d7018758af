package fewermore.marking;

/** "This side is as much as that side." */
record Statement(Side left, Side right) {
  /** Whether it holds when the unknown sign stands for {@code x}. */
  boolean holds(long x) {
    return left.value(x) == right.value(x);
  }
}
