package fewermore.wording;

/** Whole numbers as English words, as a teacher reads them aloud: no <i>and</i>, a hyphen from 21 to 99. */
public final class EnglishNumbers {
  private static final String[] UP_TO_NINETEEN = {"zero", "one", "two", "three", "four", "five", "six", "seven",
      "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen",
      "eighteen", "nineteen"};
  private static final String[] TENS = {"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty",
      "ninety"};

  private EnglishNumbers() {}

  /** @param number 0 or more; from a million up the digits come back, which a speech engine reads by itself */
  public static String words(int number) {
    if (number < 20) {
      return UP_TO_NINETEEN[number];
    }
    if (number < 100) {
      return TENS[number / 10] + (number % 10 == 0 ? "" : "-" + UP_TO_NINETEEN[number % 10]);
    }
    if (number < 1_000) {
      return UP_TO_NINETEEN[number / 100] + " hundred" + rest(number % 100);
    }
    if (number < 1_000_000) {
      return words(number / 1_000) + " thousand" + rest(number % 1_000);
    }
    return Integer.toString(number);
  }

  private static String rest(int number) {
    return number == 0 ? "" : " " + words(number);
  }
}
