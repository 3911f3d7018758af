package fewermore.calculation;

/** Tens and ones as counts; 100 is ten tens. Counts may be below 0 where they are a change. */
record Places(int tens, int ones) {
  static final Places NONE = new Places(0, 0);

  static Places of(int number) {
    return new Places(number / 10, number % 10);
  }

  int value() {
    return 10 * tens + ones;
  }

  Places plus(Places other) {
    return new Places(tens + other.tens, ones + other.ones);
  }
}
