package fewermore.records;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.Classroom;
import fewermore.classroom.OverruledMark;
import fewermore.marking.Part;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The files as programs read them that had no part in writing them. */
class SpreadsheetTest {
  private static final Classroom ROOM =
      new Classroom(1, 1, "Room \"12\", east", ZoneId.of("America/New_York"), false, Instant.EPOCH);
  private static final Instant AT = Instant.parse("2026-11-25T15:04:05Z");

  private static Table table() {
    return ProgressTable.overruled(ROOM, List.of(
        new OverruledMark(1, "José", LocalDate.of(2026, 11, 25), 7, Part.LABEL, "blank", "names-it",
            "=HYPERLINK(\"x\")\nsaid it, aloud", AT),
        new OverruledMark(2, "-Ana", LocalDate.of(2026, 11, 25), 8, Part.EQUATION, "fits", "opposite-operation", "", AT)));
  }

  @Test
  void theOverruledMarksAreReadBackByAnIndependentLibrary() throws Exception {
    try (CSVParser parser = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get()
        .parse(new StringReader(Csv.write(table(), Csv.Mark.NONE)))) {
      List<CSVRecord> rows = parser.getRecords();
      assertEquals(List.of("class", "child", "day", "problem", "part", "app_mark", "teacher_mark", "why", "overruled_at",
          "standard"), parser.getHeaderNames());
      assertEquals("Room \"12\", east", rows.get(0).get("class"));
      assertEquals("'=HYPERLINK(\"x\")\nsaid it, aloud", rows.get(0).get("why"));
      assertEquals("=HYPERLINK(\"x\")\nsaid it, aloud", Csv.read(rows.get(0).get("why")));
      assertEquals("-Ana", Csv.read(rows.get(1).get("child")));
      assertEquals("2026-11-25T15:04:05Z", rows.get(1).get("overruled_at"));
      assertEquals("CCSS.Math.Content.2.OA.A.1", rows.get(1).get("standard"));
    }
  }

  @Test
  void aSpreadsheetOpensItWithoutCalculating(@TempDir Path folder) throws Exception {
    Optional<Path> office = Stream.of("/usr/bin/soffice", "/usr/bin/libreoffice", "/opt/libreoffice/program/soffice",
        "/Applications/LibreOffice.app/Contents/MacOS/soffice").map(Path::of).filter(Files::isExecutable).findFirst();
    if (office.isEmpty()) {
      String sentence = "NO SPREADSHEET TEST: LibreOffice is not installed, so no spreadsheet has opened the files";
      System.err.println(sentence);
      Assumptions.abort(sentence);
    }
    Path csv = folder.resolve("in.csv");
    Files.writeString(csv, Csv.write(table(), Csv.Mark.BYTE_ORDER_MARK));
    Process process = new ProcessBuilder(office.get().toString(), "-env:UserInstallation=" + folder.resolve("profile").toUri(),
        "--headless", "--convert-to", "html", "--outdir", folder.toString(), csv.toString()).redirectErrorStream(true).start();
    assertTrue(process.waitFor(120, TimeUnit.SECONDS), "LibreOffice took longer than two minutes");
    String html = Files.readString(folder.resolve("in.html"));
    assertTrue(html.contains("HYPERLINK") && html.contains("José"), "a formula stays text");
  }
}
