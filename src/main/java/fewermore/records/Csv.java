package fewermore.records;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import de.siegmar.fastcsv.writer.QuoteStrategy;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;

/**
 * A table as comma-separated values: RFC 4180 (commas, CRLF, a header line, quotes doubled), dates and times
 * by ISO 8601, text to be written as UTF-8.
 *
 * <p><b>Formulas.</b> A spreadsheet takes a cell that starts with {@code = + - @}, a tab, a carriage return or
 * a line feed for a formula (OWASP, <i>CSV Injection</i>). A child's equation and a name may start like that.
 * Such a text gets an apostrophe in front and is always quoted; {@link #read} takes the apostrophe away again
 * where one of those signs follows it. A text that itself starts with apostrophes and such a sign gets one more,
 * so that what is read is what was written. Numbers and dates are written by this program and are left alone.
 */
public final class Csv {
  /** The media type of what {@link #write} gives. */
  public static final String MEDIA_TYPE = "text/csv; charset=utf-8; header=present";

  private static final String BYTE_ORDER_MARK = "\uFEFF";

  /** The rest is quoted where RFC 4180 asks for it. */
  private static final QuoteStrategy GUARDED_ARE_QUOTED = new QuoteStrategy() {
    @Override
    public boolean quoteValue(int line, int field, String value) {
      return value.startsWith("'");
    }
  };

  private Csv() {}

  /** Whether the text starts with a byte-order mark: some spreadsheets need it, strict importers refuse it. */
  public enum Mark { NONE, BYTE_ORDER_MARK }

  public static String write(Table table, Mark mark) {
    StringWriter text = new StringWriter();
    text.append(mark == Mark.BYTE_ORDER_MARK ? BYTE_ORDER_MARK : "");
    try (CsvWriter writer = CsvWriter.builder()
        .lineDelimiter(LineDelimiter.CRLF)
        .quoteStrategy(GUARDED_ARE_QUOTED)
        .build(text)) {
      writer.writeRecord(table.header());
      for (List<Object> row : table.rows()) {
        writer.writeRecord(row.stream().map(Csv::cell).toList());
      }
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory", e);
    }
    return text.toString();
  }

  private static String cell(Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof LocalDate date) {
      return DateTimeFormatter.ISO_LOCAL_DATE.format(date);
    }
    if (value instanceof Instant instant) {
      return DateTimeFormatter.ISO_INSTANT.format(instant);
    }
    return value instanceof CharSequence text ? guarded(text.toString()) : value.toString();
  }

  /** The text as it stands in a file: safe from being taken for a formula. */
  static String guarded(String text) {
    return startsLikeAFormula(withoutApostrophes(text)) ? "'" + text : text;
  }

  /** What was written, from a cell as a reader of the file gives it. */
  public static String read(String cell) {
    return cell.startsWith("'") && startsLikeAFormula(withoutApostrophes(cell)) ? cell.substring(1) : cell;
  }

  private static String withoutApostrophes(String text) {
    int start = 0;
    while (start < text.length() && text.charAt(start) == '\'') {
      start++;
    }
    return text.substring(start);
  }

  /** Full-width forms and a lead of spaces included: some spreadsheets trim or fold them before they look. */
  private static boolean startsLikeAFormula(String text) {
    if (text.isEmpty()) {
      return false;
    }
    if ("\t\r\n".indexOf(text.charAt(0)) >= 0) {
      return true;
    }
    String seen = text.stripLeading();
    return !seen.isEmpty() && "=+-@\uFF1D\uFF0B\uFF0D\uFF20".indexOf(seen.charAt(0)) >= 0;
  }
}
