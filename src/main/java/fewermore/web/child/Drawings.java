package fewermore.web.child;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The children's pictures as SVG elements, for writing straight into a page: a symbol of another file
 * would not take the page's colors.
 */
public final class Drawings {
  private static final Pattern SYMBOL =
      Pattern.compile("<symbol id=\"pic-([a-z]+)\" viewBox=\"([^\"]+)\">(.*?)</symbol>", Pattern.DOTALL);
  private static final Map<String, String> ALL = read("/static/img/pictures.svg");

  private Drawings() {}

  /**
   * One whole {@code <svg class="pic">}, hidden from screen readers: the name stands beside it.
   *
   * @param id of {@link fewermore.classroom.Picture}
   * @return an empty frame when there is no such drawing
   */
  public static String of(String id) {
    return ALL.getOrDefault(id, ALL.get(""));
  }

  static boolean has(String id) {
    return ALL.containsKey(id);
  }

  private static Map<String, String> read(String resource) {
    Map<String, String> drawings = new LinkedHashMap<>();
    drawings.put("", svg("0 0 96 96", ""));
    try (InputStream in = Drawings.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("missing from the program: " + resource);
      }
      Matcher symbol = SYMBOL.matcher(new String(in.readAllBytes(), StandardCharsets.UTF_8));
      while (symbol.find()) {
        drawings.put(symbol.group(1), svg(symbol.group(2), symbol.group(3)));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return drawings;
  }

  private static String svg(String viewBox, String shapes) {
    return "<svg class=\"pic\" viewBox=\"" + viewBox + "\" aria-hidden=\"true\" focusable=\"false\">" + shapes
        + "</svg>";
  }
}
