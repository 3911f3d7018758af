package fewermore.problem;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Problem texts from what a teacher pastes or uploads: paragraphs parted by empty lines, or CSV (RFC 4180) with a column
 * headed {@code problem} or {@code text}.
 */
public final class ProblemsFile {
  private static final List<String> HEADINGS = List.of("problem", "problems", "text");

  private ProblemsFile() {}

  /** The text as paragraphs, an empty line between two: what {@link fewermore.wording.WordingReader#readAll} takes. */
  public static String paragraphs(String content) {
    String text = content.startsWith("\uFEFF") ? content.substring(1) : content;
    String firstLine = text.strip().lines().findFirst().orElse("").toLowerCase(Locale.ROOT);
    boolean table = List.of(firstLine.split("[,;\t]")).stream()
        .anyMatch(cell -> HEADINGS.contains(cell.replace("\"", "").strip()));
    if (!table) {
      return text;
    }
    char separator = firstLine.contains(";") ? ';' : firstLine.contains("\t") ? '\t' : ',';
    List<String> problems = new ArrayList<>();
    int column = -1;
    try {
      for (CsvRecord row : CsvReader.builder().fieldSeparator(separator).ofCsvRecord(text.strip())) {
        if (column < 0) {
          List<String> heads = row.getFields().stream().map(cell -> cell.strip().toLowerCase(Locale.ROOT)).toList();
          column = HEADINGS.stream().mapToInt(heads::indexOf).filter(at -> at >= 0).findFirst().orElse(0);
        } else if (column < row.getFieldCount() && !row.getField(column).isBlank()) {
          problems.add(row.getField(column).strip().replaceAll("\\s*\\R\\s*", " "));
        }
      }
    } catch (RuntimeException notCsv) {
      return text;
    }
    return String.join("\n\n", problems);
  }
}
