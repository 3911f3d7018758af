package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumberWordsTest {
  @ParameterizedTest
  @CsvSource({
    "0, zero", "1, one", "11, eleven", "20, twenty", "21, twenty-one", "38, thirty-eight", "40, forty",
    "99, ninety-nine", "100, one hundred", "115, one hundred fifteen", "1000, one thousand",
    "52014, fifty-two thousand fourteen", "1000000, 1000000",
  })
  void englishNumbersAreReadOut(int number, String words) {
    assertEquals(words, EnglishNumbers.words(number));
  }

  /** The feminine before <i>conchas</i>, the masculine before <i>botones</i>, and both alone; from memory. */
  @ParameterizedTest
  @CsvSource({
    "0, cero, cero, cero, cero",
    "1, una, un, una, uno",
    "16, dieciséis, dieciséis, dieciséis, dieciséis",
    "21, veintiuna, veintiún, veintiuna, veintiuno",
    "22, veintidós, veintidós, veintidós, veintidós",
    "31, treinta y una, treinta y un, treinta y una, treinta y uno",
    "38, treinta y ocho, treinta y ocho, treinta y ocho, treinta y ocho",
    "70, setenta, setenta, setenta, setenta",
    "91, noventa y una, noventa y un, noventa y una, noventa y uno",
    "100, cien, cien, cien, cien",
    "101, ciento una, ciento un, ciento una, ciento uno",
    "221, doscientas veintiuna, doscientos veintiún, doscientas veintiuna, doscientos veintiuno",
    "500, quinientas, quinientos, quinientas, quinientos",
    "1000, mil, mil, mil, mil",
    "2001, dos mil una, dos mil un, dos mil una, dos mil uno",
  })
  void spanishNumbersAgreeWithTheirNoun(int number, String conchas, String botones, String fem, String masc) {
    assertEquals(conchas, SpanishNumbers.beforeNoun(number, Gender.FEMININE));
    assertEquals(botones, SpanishNumbers.beforeNoun(number, Gender.MASCULINE));
    assertEquals(fem, SpanishNumbers.alone(number, Gender.FEMININE));
    assertEquals(masc, SpanishNumbers.alone(number, Gender.MASCULINE));
  }

  @Test
  void noTwoNumbersToAThousandAreReadAlike() {
    var english = new java.util.HashSet<String>();
    var spanish = new java.util.HashSet<String>();
    for (int number = 0; number <= 1000; number++) {
      english.add(EnglishNumbers.words(number));
      spanish.add(SpanishNumbers.beforeNoun(number, Gender.MASCULINE));
    }
    assertEquals(1001, english.size());
    assertEquals(1001, spanish.size());
  }
}
