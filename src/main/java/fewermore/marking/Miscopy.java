package fewermore.marking;

/** Whether a number may be another one copied wrong. */
final class Miscopy {
  private Miscopy() {}

  /**
   * Whether {@code written} is {@code given} with two digits swapped, one digit wrong or one digit dropped.
   * A digit too many is not. A zero that has come to the front is not written.
   */
  static boolean is(int written, int given) {
    if (written == given) {
      return false;
    }
    int digits = 0;
    for (int rest = given; rest > 0 || digits == 0; rest /= 10) {
      digits++;
    }
    return isSwappedOrWrong(written, given, digits) || digits > 1 && isDropped(written, given, digits);
  }

  private static boolean isSwappedOrWrong(int written, int given, int digits) {
    int differ = 0;
    int sumWritten = 0;
    int sumGiven = 0;
    int productWritten = 1;
    int productGiven = 1;
    int w = written;
    int g = given;
    for (int i = 0; i < digits; i++) {
      if (w % 10 != g % 10) {
        differ++;
        sumWritten += w % 10;
        sumGiven += g % 10;
        productWritten *= w % 10;
        productGiven *= g % 10;
      }
      w /= 10;
      g /= 10;
    }
    // Two digits in two places that have the same sum and product are the same two.
    return w == 0 && (differ == 1 || differ == 2 && sumWritten == sumGiven && productWritten == productGiven);
  }

  private static boolean isDropped(int written, int given, int digits) {
    for (int i = 0, unit = 1; i < digits; i++, unit *= 10) {
      if (given / unit / 10 * unit + given % unit == written) {
        return true;
      }
    }
    return false;
  }
}
