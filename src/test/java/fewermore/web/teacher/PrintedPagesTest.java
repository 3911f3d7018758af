package fewermore.web.teacher;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Media;
import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.InventedClass;
import fewermore.classroom.InventedPieces;
import fewermore.classroom.PieceOfWork;
import fewermore.records.Conference;
import fewermore.records.Conference.Place;
import fewermore.store.RecordStore.OwnSentence;
import fewermore.web.Assets;
import fewermore.web.Chromium;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** What is printed, made by a real browser and read back by a library that had no part in making it. */
class PrintedPagesTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
  private static final Classroom ROOM =
      new Classroom(1, 1, "Room 12", ZoneId.of("America/New_York"), false, Instant.EPOCH);
  private static final InventedPieces MADE =
      InventedPieces.of(InventedClass.USUAL, TODAY.minusDays(1), ROOM.zone(), 1);
  private static final Assets ASSETS = Assets.load();
  private static final String ORIGIN = "http://tablet.test/";

  private static String words(String text) {
    return text.replaceAll("\\s+", " ").strip();
  }

  /** Reads what {@code format} makes of a page; keeps a picture where {@code fewermore.pictures} names a folder. */
  private static PDDocument printed(Page page, String html, String format, String name) throws IOException {
    page.setContent("<p>one moment</p>");
    page.route(ORIGIN + "page", route -> route.fulfill(new com.microsoft.playwright.Route.FulfillOptions()
        .setStatus(200).setContentType("text/html; charset=utf-8").setBody(html)));
    page.navigate(ORIGIN + "page");
    page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
    page.evaluate("document.fonts.ready");
    byte[] pdf = page.pdf(new Page.PdfOptions().setFormat(format).setPreferCSSPageSize(false).setPrintBackground(true));
    page.unroute(ORIGIN + "page");
    PDDocument document = PDDocument.load(pdf);
    String folder = System.getProperty("fewermore.pictures");
    if (folder != null) {
      ImageIO.write(new PDFRenderer(document).renderImageWithDPI(0, 90, ImageType.RGB), "png",
          new File(folder, name + "-" + format + ".png"));
    }
    return document;
  }

  private static BrowserContext printer() {
    BrowserContext context = Chromium.tablet(1366, 768);
    context.route("**/static/**", route -> ASSETS
        .find(route.request().url().substring(ORIGIN.length()).replaceFirst("\\?.*", "").replaceFirst("static/[^/]+/", ""))
        .ifPresent(file -> route.fulfill(new com.microsoft.playwright.Route.FulfillOptions().setStatus(200)
            .setContentType(file.type()).setBodyBytes(file.content()))));
    return context;
  }

  private static String html(String template, Object page) {
    return TeacherTemplatesTest.render("teacher/" + template, page, null);
  }

  private static List<PieceOfWork> workOf(Child child) {
    return MADE.pieces.stream().filter(piece -> piece.child().equals(child)).toList();
  }

  /** Sentences as long as the form lets the teacher write them. */
  private static Map<String, OwnSentence> longest() {
    Map<String, OwnSentence> own = new HashMap<>();
    for (Place place : Place.values()) {
      String text = "We count it out with blocks, slowly and aloud, and then once more from the other side. ".repeat(6);
      own.put(place.id(), new OwnSentence("en", text.substring(0, place.longest()).strip()));
    }
    return own;
  }

  @Test
  void aConferencePageIsOnePageOnLetterAndA4WithNothingCut() throws IOException {
    List<Executable> all = new ArrayList<>();
    try (BrowserContext context = printer()) {
      Page page = context.newPage();
      Map<String, ConferencePage> sheets = new LinkedHashMap<>();
      for (Child child : List.of(MADE.children.get(0), MADE.children.get(7))) {
        sheets.put(child.name() + "-en", RecordsPagesForTests.conference(child, workOf(child), TODAY, "en", Map.of()));
        sheets.put(child.name() + "-es", RecordsPagesForTests.conference(child, workOf(child), TODAY, "es", Map.of()));
      }
      Child first = MADE.children.get(0);
      Conference one = Conference.of(first, workOf(first), List.of(), TODAY, "en");
      sheets.put("longest", ConferencePage.of(new Conference(first, "en", one.own(), Stream.of("August", "September",
          "October", "November", "December").map(month -> new Conference.Month(month, 30, 61)).toList(), one.sentences()),
          longest(), TODAY, "Ms. Adeyemi", "Room 12"));
      sheets.put("none", RecordsPagesForTests.conference(first, List.of(), TODAY, "en", Map.of()));
      for (Map.Entry<String, ConferencePage> sheet : sheets.entrySet()) {
        for (String format : List.of("Letter", "A4")) {
          String where = sheet.getKey() + " on " + format;
          try (PDDocument document = printed(page, html("conference", sheet.getValue()), format,
              "print-conference-" + sheet.getKey())) {
            int pages = document.getNumberOfPages();
            String text = words(new PDFTextStripper().getText(document));
            all.add(() -> assertEquals(1, pages, where));
            sheet.getValue().all().stream().filter(line -> !line.text().isEmpty()
                && (sheet.getValue().own() != null || !line.id().equals("caption"))
                && (!sheet.getValue().months().isEmpty() || !line.id().equals("since"))).forEach(line ->
                all.add(() -> assertTrue(text.contains(words(line.text())), where + ": " + line.text() + " in " + text)));
            all.add(() -> assertTrue(text.contains("Ms. Adeyemi, Room 12"), where + ": signed"));
            all.add(() -> assertTrue(!text.contains("Print this page") && !text.contains("Sign out"), where));
            BufferedImage grey = new PDFRenderer(document).renderImageWithDPI(0, 72, ImageType.GRAY);
            int margin = inkBeyond(grey);
            all.add(() -> assertEquals(0, margin, where + ": ink in the margin"));
          }
        }
      }
    }
    assertAll(all);
  }

  /** Dark dots within a quarter of an inch of an edge: cut or overrun text. */
  private static int inkBeyond(BufferedImage grey) {
    int ink = 0;
    for (int y = 0; y < grey.getHeight(); y++) {
      for (int x = 0; x < grey.getWidth(); x++) {
        boolean edge = x < 18 || y < 18 || x >= grey.getWidth() - 18 || y >= grey.getHeight() - 18;
        ink += edge && (grey.getRGB(x, y) & 0xff) < 160 ? 1 : 0;
      }
    }
    return ink;
  }

  @Test
  void withoutColorTheThreePartsOfTheBarsDiffer() throws IOException {
    try (BrowserContext context = printer()) {
      Page page = context.newPage();
      Child child = MADE.children.stream().filter(each -> RecordsPagesForTests.conference(each, workOf(each), TODAY, "en",
          Map.of()).own().bars() != null).findFirst().orElseThrow();
      printed(page, html("conference", RecordsPagesForTests.conference(child, workOf(child), TODAY, "en", Map.of())), "Letter", "print-grey").close();
      Object colors = page.evaluate("""
          [...document.querySelectorAll('.sheet *')].flatMap(each => {
            const style = getComputedStyle(each);
            return [style.color, style.backgroundColor, style.borderTopColor];
          }).filter(color => {
            const [r, g, b] = color.match(/[\\d.]+/g).map(Number);
            return Math.max(r, g, b) - Math.min(r, g, b) > 12;
          })""");
      assertEquals(List.of(), colors, "on paper nothing is said by hue");
      Object fills = page.evaluate("""
          ['.own .longer', '.own .shorter', '.own .gap'].map(part => {
            const style = getComputedStyle(document.querySelector(part));
            return style.backgroundColor + ' ' + (style.backgroundImage !== 'none') + ' ' + style.borderTopStyle;
          })""");
      assertEquals(3, ((List<?>) fills).stream().distinct().count(), "solid, white and hatched: " + fills);
    }
  }

  @Test
  void everyChildsPageIsASheetOfItsOwn() throws IOException {
    try (BrowserContext context = printer()) {
      List<ConferencePage> pages = MADE.children.stream()
          .map(child -> RecordsPagesForTests.conference(child, workOf(child), TODAY, "en", Map.of())).toList();
      try (PDDocument document = printed(context.newPage(), html("conference-all", pages), "Letter",
          "print-conference-all")) {
        assertEquals(MADE.children.size(), document.getNumberOfPages());
        for (int at = 0; at < pages.size(); at++) {
          PDFTextStripper stripper = new PDFTextStripper();
          stripper.setStartPage(at + 1);
          stripper.setEndPage(at + 1);
          String text = words(stripper.getText(document));
          for (ConferencePage other : pages) {
            assertEquals(other == pages.get(at), text.contains(words(other.headings().get("shows"))),
                "page " + (at + 1) + " and " + other.child().name());
          }
        }
      }
    }
  }

  @Test
  void theSubstitutesPageAndEveryHelpPageArePrintedOnOnePage() throws IOException {
    Map<String, String> pages = TeacherTemplatesTest.allPages();
    List<Executable> all = new ArrayList<>();
    try (BrowserContext context = printer()) {
      Page page = context.newPage();
      for (String name : pages.keySet()) {
        if (name.equals("today") || name.startsWith("help-")) {
          for (String format : List.of("Letter", "A4")) {
            try (PDDocument document = printed(page, pages.get(name), format, "print-" + name)) {
              int count = document.getNumberOfPages();
              String text = new PDFTextStripper().getText(document);
              all.add(() -> assertEquals(1, count, name + " on " + format));
              all.add(() -> assertTrue(text.length() > 200 && !text.contains("Sign out"), name));
            }
          }
        }
      }
    }
    assertTrue(all.size() >= 4 * 12, "pages were printed");
    assertAll(all);
  }
}
