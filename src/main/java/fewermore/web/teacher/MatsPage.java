package fewermore.web.teacher;

import java.util.Locale;

/**
 * One printed sheet of blank place-value mats and number lines. {@code pages/teacher/mats.html},
 * {@code GET /paper/mats}, with {@code ?language=es} for Spanish words.
 */
public record MatsPage(String name, int mats, int lines, StrategyPicture mat, StrategyPicture line) {
  public static MatsPage of(Locale language) {
    return new MatsPage(language.getLanguage().equals("es") ? "Nombre" : "Name", 2, 3,
        StrategyPicture.blankMat(language), StrategyPicture.blankLine(language));
  }
}
