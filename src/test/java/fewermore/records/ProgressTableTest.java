package fewermore.records;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.calculation.Calculation;
import fewermore.calculation.StrategyKind;
import fewermore.calculation.Way;
import fewermore.calculation.WorkedSolutions;
import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.HandIn;
import fewermore.classroom.Made;
import fewermore.classroom.PieceOfWork;
import fewermore.marking.Marker;
import fewermore.marking.StrategyMarker;
import fewermore.marking.StrategyWork;
import fewermore.marking.Work;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.junit.jupiter.api.Test;

class ProgressTableTest {
  private static final Classroom ROOM =
      new Classroom(1, 1, "Room 12", ZoneId.of("America/New_York"), false, Instant.EPOCH);
  private static final Child BO = Made.child("Bo");

  /** A first try by the word, then, after a prompt, one that fits. */
  private static PieceOfWork twoTries() {
    PieceOfWork first = Made.work("Bo", 4, Kind.LARGER_FEWER, Made.MONDAY, "= 28 - 15", "opposite-operation+word");
    HandIn told = first.last();
    PieceOfWork second = Made.work("Bo", 4, Kind.LARGER_FEWER, Made.MONDAY, "28 + 15 = x", "fits");
    return new PieceOfWork(BO, first.problem(), List.of(
        new HandIn(told.work(), told.page(), 1, told.at(), told.day(), told.sitting(), told.tablet(), false, told.at(),
            told.parts(), told.marks()), second.last()));
  }

  private static List<Map<String, String>> read(Table table) throws IOException {
    var format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(Csv.write(table, Csv.Mark.NONE), format)) {
      return parser.getRecords().stream().map(record -> record.toMap()).toList();
    }
  }

  @Test
  void firstTriesAndLastTriesStandApart() throws IOException {
    var rows = read(ProgressTable.childByKind(ROOM, List.of(BO), List.of(twoTries())));
    assertEquals(6, rows.size(), "a row for each kind");
    var row = rows.stream().filter(each -> each.get("kind").equals("larger-fewer")).findFirst().orElseThrow();
    assertEquals("1", row.get("problems"));
    assertEquals("0", row.get("first_equation_fits"));
    assertEquals("1", row.get("last_equation_fits"));
    assertEquals("no", row.get("word_agrees"));
    assertEquals("2026-11-16", row.get("first_day"));
  }

  @Test
  void aPieceOfWorkIsOneRowWithTheChildsOwnWords() throws IOException {
    var rows = read(ProgressTable.pieces(ROOM, List.of(BO), List.of(twoTries())));
    assertEquals(1, rows.size());
    assertEquals("'= 28 - 15", rows.get(0).get("first_equation"));
    assertEquals("= 28 - 15", Csv.read(rows.get(0).get("first_equation")));
    assertEquals("opposite-operation", rows.get(0).get("first_equation_mark"));
    assertEquals("yes", rows.get(0).get("first_follows_word"));
    assertEquals("28 + 15 = x", rows.get(0).get("last_equation"));
    assertEquals("fits", rows.get(0).get("last_equation_mark"));
    assertEquals("2", rows.get(0).get("tries"));
    assertEquals("43", rows.get(0).get("right_answer"));
  }

  @Test
  void theStrategiesOfTheFirstAndTheLastTryHaveColumnsOfTheirOwn() throws IOException {
    PieceOfWork plain = Made.work("Bo", 4, Kind.LARGER_FEWER, Made.MONDAY, "28 + 15 = x", "fits");
    Comparison story = plain.problem().story();
    Calculation calculation = StrategyMarker.calculation(story, "28 + 15 = x").orElseThrow();
    StrategyWork line = new StrategyWork(StrategyKind.LINE,
        WorkedSolutions.of(calculation, Way.TENS_FIRST).orElseThrow().working().steps(),
        new StrategyWork(StrategyKind.PIECES, WorkedSolutions.of(calculation, Way.PUT_ON).orElseThrow().working().steps(), null));
    Work parts = new Work("28 + 15 = x", "43", "", null, null, line);
    HandIn second = plain.last();
    HandIn told = new HandIn(second.work(), second.page(), 1, second.at(), second.day(), second.sitting(), second.tablet(), false,
        second.at(), second.parts(), second.marks());
    second = new HandIn(told.work(), told.page(), 2, told.at(), told.day(), told.sitting(), told.tablet(), false,
        told.at(), parts, Marker.mark(story, parts));
    var row = read(ProgressTable.pieces(ROOM, List.of(BO), List.of(new PieceOfWork(BO, plain.problem(), List.of(told, second)))))
        .get(0);
    assertEquals("", row.get("first_strategy"), "none was asked");
    assertEquals("", row.get("first_strategy_mark"));
    assertEquals("line", row.get("last_strategy"));
    assertEquals("fits", row.get("last_strategy_mark"));
    assertEquals("tens-first", row.get("last_strategy_way"));
    assertEquals("pieces", row.get("last_check"));
    assertEquals("yes", row.get("last_check_agrees"));
  }

  @Test
  void everyColumnHasAnOwnNameAndSaysWhatItMeans() {
    for (Table table : List.of(ProgressTable.childByKind(ROOM, List.of(BO), List.of()),
        ProgressTable.pieces(ROOM, List.of(BO), List.of()))) {
      assertEquals(table.header().size(), new HashSet<>(table.header()).size());
      assertTrue(table.columns().stream().allMatch(column -> column.means().length() > 10), table.name());
      assertTrue(table.header().stream().allMatch(name -> name.matches("[a-z_]+")), table.name());
    }
  }
}
