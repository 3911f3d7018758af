package fewermore.web.teacher;

import fewermore.classroom.PieceOfWork;
import fewermore.marking.Part;
import fewermore.records.Conference;
import fewermore.records.Conference.Own;
import fewermore.records.Conference.Place;
import fewermore.records.FamilyTexts;
import fewermore.store.RecordStore.OwnSentence;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The page a family takes home, and beside it on the screen a form to change every sentence.
 * {@code pages/teacher/conference.html}; posts each place's id to the same address with {@code ?in=<language>}.
 *
 * @param language of the page, {@code en} or {@code es}
 * @param title "Family conference, November"
 * @param own her own work, or null
 * @param since the heading over the months, or empty
 * @param signed the teacher and the class
 */
public record ConferencePage(
    ShownChild child, String language, String title, Map<String, Line> lines, List<Line> all, OwnWork own,
    String since, List<MonthLine> months, Map<String, String> headings, String signed) {

  /** @param label for the form; @param text what stands there; @param app the app's own; @param changed by the teacher */
  public record Line(
      String id, String label, String text, String app, boolean changed, String language, int longest) {}

  /** @param language of the story; @param bars null unless she drew them to fit; the same for the rest */
  public record OwnWork(String language, List<String> sentences, BarsPicture bars, WrittenLine equation, String answer, String label) {}

  /** @param blocks one a story: true where it fits; @param width of one block in SVG units */
  public record MonthLine(String name, List<Block> blocks, int width, String words) {}

  public record Block(int x, boolean fits) {}

  private static final int TRACK = 320;
  private static final int WIDEST = 30;

  public static ConferencePage of(
      Conference conference, Map<String, OwnSentence> own, LocalDate today, String teacher, String className) {
    FamilyTexts texts = FamilyTexts.in(conference.language());
    String name = conference.child().name();
    Map<String, Line> lines = new java.util.LinkedHashMap<>();
    for (Place place : Place.values()) {
      String app = conference.sentence(place);
      OwnSentence changed = own.get(place.id());
      boolean stands = changed != null && (!app.isEmpty() || place != Place.SINCE && place != Place.CAPTION);
      lines.put(place.id(), new Line(place.id(), label(place), stands ? changed.content() : app, app, stands,
          stands ? changed.language() : conference.language(), place.longest()));
    }
    String month = today.getMonth().getDisplayName(TextStyle.FULL_STANDALONE, texts.locale());
    List<MonthLine> months = conference.months().stream().map(each -> month(each, texts)).toList();
    String since = months.isEmpty() ? "" : months.size() == 1 ? texts.of("heading.in", months.get(0).name)
        : texts.of("heading.since", months.get(0).name);
    return new ConferencePage(ShownChild.of(conference.child()), conference.language(), texts.of("title", month), lines,
        List.copyOf(lines.values()), conference.own() == null ? null : ownWork(conference.own(), conference.language()),
        since, months, Map.of("shows", texts.of("heading.shows", name), "next", texts.of("heading.next"),
            "home", texts.of("heading.home")), teacher + ", " + className);
  }

  private static String label(Place place) {
    return switch (place) {
      case LEAD -> "Under the name";
      case SHOWS -> "What the work shows";
      case CAPTION -> "Under the work";
      case SINCE -> "Over the months";
      case NEXT -> "The next step";
      case HOME -> "To try at home";
      case CLOSING -> "At the foot";
    };
  }

  private static OwnWork ownWork(Own own, String language) {
    PieceOfWork piece = own.piece();
    return new OwnWork(piece.problem().spanish().isEmpty() ? "en" : language, piece.problem().sentences(language),
        own.good().contains(Part.BARS) ? BarsPicture.of(piece.problem()) : null,
        own.good().contains(Part.EQUATION) ? WrittenLine.of(own.attempt().parts().equation()) : null,
        own.good().contains(Part.ANSWER) ? own.attempt().parts().answer().strip() : null,
        own.good().contains(Part.LABEL) ? withoutNumber(own.attempt().parts().label().strip(), own.good().contains(Part.ANSWER)) : null);
  }

  /** "38 shells" behind the answer 38 is "shells". */
  private static String withoutNumber(String label, boolean behindAnswer) {
    return behindAnswer ? label.replaceFirst("^[0-9]+\\s+", "") : label;
  }

  private static MonthLine month(Conference.Month month, FamilyTexts texts) {
    int width = Math.max(3, Math.min(WIDEST, TRACK / month.of()));
    List<Block> blocks = Stream.iterate(0, at -> at + 1).limit(month.of())
        .map(at -> new Block(at * width + 1, at < month.fits())).toList();
    return new MonthLine(month.name(), blocks, width, texts.of("month.of", month.fits(), month.of()));
  }

  public Line line(String id) {
    return lines.get(id);
  }

  public boolean anyOtherLanguage() {
    return all.stream().anyMatch(line -> !line.language.equals(language));
  }
}
