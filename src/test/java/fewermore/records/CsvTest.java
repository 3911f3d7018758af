package fewermore.records;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.records.Table.Column;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvTest {
  private static Table oneColumn(List<String> values) {
    return new Table("t", List.of(new Column("written", ""), new Column("after", "")),
        values.stream().map(value -> Arrays.<Object>asList(value, 1)).toList());
  }

  private static List<CSVRecord> parsed(String csv) throws IOException {
    try (CSVParser parser = CSVParser.parse(csv, CSVFormat.RFC4180)) {
      return parser.getRecords();
    }
  }

  /** The signs of OWASP, "CSV Injection": = + - @, tab, carriage return, line feed. */
  @ParameterizedTest
  @ValueSource(strings = {"=52-14", "+52", "-14", "@name", "\t=1", "\r=1", "\n=1", "= 52 - 14", " =1", "'=1", "''+1",
      "=HYPERLINK(\"http://x\";\"y\")", "＝1+1"})
  void whatASpreadsheetWouldTakeForAFormulaIsGuardedAndReadBackAsWritten(String text) throws IOException {
    CSVRecord row = parsed(Csv.write(oneColumn(List.of(text)), Csv.Mark.NONE)).get(1);
    assertTrue(row.get(0).startsWith("'"), row.get(0));
    assertTrue(Csv.write(oneColumn(List.of(text)), Csv.Mark.NONE).contains("\"'"), "a guarded cell is quoted");
    assertEquals(text, Csv.read(row.get(0)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"52 − 14 = x", "a,b", "say \"shells\"", "line\r\nbreak", "'round the corner", "José, Zoë", "x=1", "",
      "5-3", " spaces "})
  void otherTextIsLeftAsItIs(String text) throws IOException {
    CSVRecord row = parsed(Csv.write(oneColumn(List.of(text)), Csv.Mark.NONE)).get(1);
    assertEquals(text, row.get(0));
    assertEquals(text, Csv.read(row.get(0)));
  }

  @Test
  void anyTextComesBackThroughAnotherLibraryAsItWasWritten() throws IOException {
    long seed = 4180;
    Random random = new Random(seed);
    String signs = "'=+-@\t\r\n,\";ab 1−é\uFF1D";
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < 5_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int at = 0; at < random.nextInt(9); at++) {
        text.append(signs.charAt(random.nextInt(signs.length())));
      }
      texts.add(text.toString());
    }
    List<CSVRecord> rows = parsed(Csv.write(oneColumn(texts), Csv.Mark.NONE));
    assertEquals(texts.size() + 1, rows.size(), "seed " + seed);
    for (int i = 0; i < texts.size(); i++) {
      String cell = rows.get(i + 1).get(0);
      assertEquals(texts.get(i), Csv.read(cell), "seed " + seed + " text " + i);
      assertTrue(cell.isEmpty() || "=+-@\t\r\n".indexOf(cell.charAt(0)) < 0, "seed " + seed + " cell " + cell);
    }
  }

  @Test
  void linesEndInCarriageReturnAndLineFeedAndAMarkIsAChoice() {
    Table table = oneColumn(List.of("a"));
    assertEquals("written,after\r\na,1\r\n", Csv.write(table, Csv.Mark.NONE));
    assertEquals('\uFEFF', Csv.write(table, Csv.Mark.BYTE_ORDER_MARK).charAt(0));
    assertFalse(Csv.write(table, Csv.Mark.NONE).startsWith("\uFEFF"));
  }

  @Test
  void datesAndTimesAreIsoAndNumbersAreLeftAlone() throws IOException {
    Table table = new Table("t", List.of(new Column("day", ""), new Column("at", ""), new Column("n", ""), new Column("none", "")),
        List.of(Arrays.asList(LocalDate.of(2026, 11, 25), Instant.parse("2026-11-25T05:06:37Z"), -3, null)));
    CSVRecord row = parsed(Csv.write(table, Csv.Mark.NONE)).get(1);
    assertEquals(List.of("2026-11-25", "2026-11-25T05:06:37Z", "-3", ""), row.toList());
  }
}
