package fewermore.wording;

/**
 * Whole numbers as Spanish words. <i>Uno</i> and the hundreds from 200 agree with the noun, and <i>uno</i> is cut
 * before a masculine noun: <i>veintiuna conchas, veintiún botones, treinta y un botones, treinta y una conchas</i>
 * (school grammar; from memory, to be read by a native speaker).
 */
public final class SpanishNumbers {
  private static final String[] UP_TO_TWENTY_NINE = {"cero", "uno", "dos", "tres", "cuatro", "cinco", "seis", "siete",
      "ocho", "nueve", "diez", "once", "doce", "trece", "catorce", "quince", "dieciséis", "diecisiete", "dieciocho",
      "diecinueve", "veinte", "veintiuno", "veintidós", "veintitrés", "veinticuatro", "veinticinco", "veintiséis",
      "veintisiete", "veintiocho", "veintinueve"};
  private static final String[] TENS = {"", "", "", "treinta", "cuarenta", "cincuenta", "sesenta", "setenta",
      "ochenta", "noventa"};
  private static final String[] HUNDREDS = {"", "ciento", "doscientos", "trescientos", "cuatrocientos", "quinientos",
      "seiscientos", "setecientos", "ochocientos", "novecientos"};

  private SpanishNumbers() {}

  /** As said right before a noun of that gender. From a million up the digits come back. */
  public static String beforeNoun(int number, Gender gender) {
    String words = alone(number, gender);
    if (gender == Gender.FEMININE || !words.endsWith("uno")) {
      return words;
    }
    String cut = words.substring(0, words.length() - 1);
    return cut.endsWith("veintiun") ? cut.substring(0, cut.length() - 2) + "ún" : cut;
  }

  /** As said when the noun is left out: <i>uno más, una más</i>. */
  public static String alone(int number, Gender gender) {
    if (number >= 1_000_000) {
      return Integer.toString(number);
    }
    String words = masculine(number);
    if (gender == Gender.MASCULINE) {
      return words;
    }
    String agreeing = words.replaceAll("cientos\\b", "cientas").replace("quinientos", "quinientas");
    return agreeing.endsWith("uno") ? agreeing.substring(0, agreeing.length() - 1) + "a" : agreeing;
  }

  private static String masculine(int number) {
    if (number < 30) {
      return UP_TO_TWENTY_NINE[number];
    }
    if (number < 100) {
      return TENS[number / 10] + (number % 10 == 0 ? "" : " y " + UP_TO_TWENTY_NINE[number % 10]);
    }
    if (number == 100) {
      return "cien";
    }
    if (number < 1_000) {
      return HUNDREDS[number / 100] + rest(number % 100);
    }
    int thousands = number / 1_000;
    String many = thousands == 1 ? "" : beforeNoun(thousands, Gender.MASCULINE) + " ";
    return many + "mil" + rest(number % 1_000);
  }

  private static String rest(int number) {
    return number == 0 ? "" : " " + masculine(number);
  }
}
