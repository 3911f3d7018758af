package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Page;
import fewermore.store.Stores;
import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/** The teacher's day in a real browser, with tablets beside it. */
class TheDayTest {
  private static final Work CUE = new Work("19 - 15 = x", "4", "beads", new Bars("Theo", "x", "15", "19"), null);

  private final List<String> complaints = new ArrayList<>();

  private Page page(BrowserContext context) {
    Page page = context.newPage();
    page.onPageError(complaints::add);
    page.onConsoleMessage(message -> {
      if (message.type().equals("error")) {
        complaints.add(message.text());
      }
    });
    return page;
  }

  private static void clean(Page page) {
    var found = new AxeBuilder(page).setLegacyMode(true).analyze().getViolations();
    assertEquals(List.of(), found.stream().map(each -> page.url() + " " + each.getId() + " "
        + each.getNodes().stream().map(node -> node.getHtml()).toList()).toList());
  }

  private void signIn(Page page, Rig rig) {
    page.navigate("http://localhost:" + rig.app.teacherPort() + "/sign-in");
    page.fill("#passphrase", Rig.PASSPHRASE);
    page.press("#passphrase", "Enter");
    page.waitForURL("**/plan");
  }

  @Test
  void theFirstVisitMakesAPassphraseAClassAndTodaysSet() throws IOException {
    Path folder = Files.createTempDirectory("fewermore-first");
    Settings settings = new Settings(folder, 0, 0, "127.0.0.1", null);
    try (App app = App.start(settings, Stores.open(folder), Network.loopbackOnly(),
            java.time.Clock.systemUTC());
        BrowserContext laptop = Chromium.tablet(1366, 768)) {
      Page page = page(laptop);
      page.navigate("http://localhost:" + app.teacherPort() + "/");
      page.waitForURL("**/first");
      clean(page);
      page.fill("[name=passphrase]", "short");
      page.fill("[name=again]", "short");
      page.evaluate("document.querySelector('main form').noValidate = true");
      page.press("[name=again]", "Enter");
      page.waitForSelector(".problem");
      page.fill("[name=passphrase]", "a quiet tide pool");
      page.fill("[name=again]", "a quiet tide pool");
      page.press("[name=again]", "Enter");
      page.waitForURL("**/welcome");
      clean(page);
      page.fill("[name=name]", "Room 7");
      page.fill("[name=names]", "Noor\nElsie\nnoor\n");
      page.click("form[action='/classes'] button");
      page.waitForSelector(".problem");
      assertTrue(page.textContent(".problem").contains("Lines 1 and 3"), page.textContent(".problem"));
      assertEquals("Noor\nElsie\nnoor\n", page.inputValue("[name=names]").replace("\r", ""));
      page.fill("[name=names]", "Noor\nElsie\nKofi\n");
      page.click("form[action='/classes'] button");
      page.waitForURL("**/plan");
      clean(page);
      page.click("text=Take the proposed mix");
      page.waitForSelector("form[action='/plan/give']");
      clean(page);
      String first = page.locator("form[action='/plan/replace'] input[name=problem]").first().inputValue();
      page.locator("form[action='/plan/replace'] button").first().click();
      page.waitForCondition(() -> !page.locator("form[action='/plan/replace'] input[name=problem]").first()
          .inputValue().equals(first));
      page.click("form[action='/plan/give'] button");
      page.waitForURL("**/board");
      clean(page);
      assertFalse(page.content().contains("Noor"), "the Board holds no name");
    }
    complaints.removeIf(each -> each.contains("422"));
    assertEquals(List.of(), complaints);
  }

  @Test
  void findingsChangeByThemselvesWhenAChildHandsIn() {
    try (Rig rig = Rig.start(); BrowserContext laptop = Chromium.tablet(1366, 768)) {
      rig.give(List.of(Stories.BEADS, Stories.STAMPS, Stories.STAMPS));
      Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
      Page page = page(laptop);
      signIn(page, rig);
      page.navigate("http://localhost:" + rig.app.teacherPort() + "/findings");
      page.waitForSelector("text=No work yet.");
      clean(page);
      noor.sent(noor.item(noor.work(2), 1, "handed-in", CUE));
      page.waitForSelector("text=Too early to tell about 3 children.");
      clean(page);
      Work added = new Work("61 + 23 = x", "84", "stamps", new Bars("Omar", "61", "23", "x"), null);
      noor.sent(noor.item(noor.work(3), 1, "handed-in", CUE));
      noor.sent(noor.item(noor.work(4), 1, "handed-in", added));
      noor.sent(noor.item(noor.work(5), 1, "handed-in", added));
      page.waitForSelector("h1:has-text(\"where they read\"), h1:has-text(\"where the word was\")");
      page.waitForCondition(() -> page.locator("td .to-work u").count() >= 2); // its telling sign is underlined
      clean(page);
    }
    assertEquals(List.of(), complaints);
  }

  @Test
  void theProgressFilesDownloadAndParse() throws IOException {
    try (Rig rig = Rig.start(); BrowserContext laptop = Chromium.tablet(1366, 768)) {
      Tablet noor = Tablet.comeIn(rig, rig.children.get(0));
      noor.sent(noor.item(noor.work(2), 1, "handed-in", CUE));
      noor.sent(noor.item(noor.work(2), 2, "handed-in",
          new Work("= 15 + 19", "34", "@beads", new Bars("Theo", "x", "15", "19"), null)));
      Page page = page(laptop);
      signIn(page, rig);
      List<CSVRecord> work = csv(page, "/records/work.csv");
      assertEquals(1, work.size());
      assertEquals("19 - 15 = x", work.get(0).get("first_equation"));
      assertEquals("opposite-operation", work.get(0).get("first_equation_mark"));
      assertEquals("yes", work.get(0).get("first_follows_word"));
      assertEquals("'= 15 + 19", work.get(0).get("last_equation"));
      assertEquals("'@beads", work.get(0).get("last_label"));
      assertEquals(rig.services.today(rig.classroom).toString(), work.get(0).get("day"));
      List<CSVRecord> kinds = csv(page, "/records/kinds.csv");
      assertEquals(rig.children.size() * 6, kinds.size());
      CSVRecord row = kinds.stream().filter(each -> each.get("child").equals("Noor")
          && each.get("kind").equals("larger-fewer")).findFirst().orElseThrow();
      assertEquals("0", row.get("first_equation_fits"));
      assertEquals("1", row.get("last_equation_fits"));
    }
    assertEquals(List.of(), complaints);
  }

  private static List<CSVRecord> csv(Page page, String path) throws IOException {
    Download download = page.waitForDownload(() -> page.evaluate(
        "path => { const a = document.createElement('a'); a.href = path; document.body.append(a); a.click(); }", path));
    try (Reader text = Files.newBufferedReader(download.path(), StandardCharsets.UTF_8);
        CSVParser parser = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get().parse(text)) {
      return parser.getRecords();
    }
  }
}
