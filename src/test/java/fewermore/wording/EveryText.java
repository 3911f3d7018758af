package fewermore.wording;

import java.util.LinkedHashSet;
import java.util.Set;

/**
 * Prints every scenario, kind and shape once, a text a line, for a grammar checker or a reader:
 * {@code EveryText en} or {@code EveryText es}.
 */
public final class EveryText {
  private EveryText() {}

  public static void main(String[] args) {
    Set<String> texts = new LinkedHashSet<>();
    Telling.forEach(1, told -> texts.add(args[0].equals("es") ? told.spanish().text() : told.english().text()));
    texts.forEach(System.out::println);
  }
}
