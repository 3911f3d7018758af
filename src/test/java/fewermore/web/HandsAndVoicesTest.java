package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import fewermore.classroom.Child;
import fewermore.marking.Reading;
import fewermore.marking.Work;
import fewermore.store.HandStore;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the laptop keeps of a hand that goes up, of the teacher's voice, and of what a tablet can speak with. */
class HandsAndVoicesTest {
  private Rig rig;
  private Child noor;

  @BeforeEach
  void start() {
    rig = Rig.startForTablets();
    noor = rig.children.get(0);
  }

  @AfterEach
  void stop() {
    rig.close();
  }

  private List<HandStore.Raised> raised() {
    return rig.services.hands.raised(rig.classroom.id(), rig.services.today(rig.classroom));
  }

  private static String up(Tablet tablet) {
    return tablet.browser.postJson("/hand", "{\"sitting\":\"" + tablet.sitting + "\",\"key\":\"" + tablet.key
        + "\"}").body();
  }

  @Test
  void aHandIsUpFromTheFirstTapUntilTheChildOrTheTeacherPutsItDown() throws Exception {
    Tablet tablet = Tablet.comeIn(rig, noor);
    long problem = rig.set.problems().get(0).id();
    tablet.sent(tablet.item(tablet.work(1), 1, "help", null));
    assertEquals(1, raised().size());
    assertEquals(noor.id(), raised().get(0).child());
    assertEquals(problem, raised().get(0).problem());
    assertFalse(raised().get(0).since().isAfter(rig.now()));
    assertEquals("{\"fewermore\":1,\"up\":[\"" + tablet.work(1) + "\"]}", up(tablet));
    tablet.load();
    assertTrue(tablet.problems.get(0).path("handUp").asBoolean(), "still up after the page was loaded again");
    var down = tablet.item(tablet.work(1), 2, "hand-down", null);
    assertEquals("[[\"" + tablet.work(1) + "\",\"" + tablet.page + "\",2]]", tablet.sent(down).path("took").toString());
    assertEquals(List.of(), raised());
    assertEquals("[[\"" + tablet.work(1) + "\",\"" + tablet.page + "\",2]]", tablet.sent(down).path("took").toString(),
        "sent again it is acknowledged again");
    assertEquals("{\"fewermore\":1,\"up\":[]}", up(tablet));
    assertTrue(rig.services.hands.teacherWasThere(noor.id(), problem).isEmpty());
    Thread.sleep(20);
    tablet.sent(tablet.item(tablet.work(1), 3, "help", null));
    assertEquals(1, raised().size(), "asked again");
    rig.services.hands.down(noor.id(), problem, HandStore.Who.TEACHER, rig.now());
    assertEquals(List.of(), raised());
    assertTrue(rig.services.hands.teacherWasThere(noor.id(), problem).isPresent());
  }

  @Test
  void aHandThatWasTakenDownOnTheTabletBeforeItArrivedIsNotUp() {
    Tablet tablet = Tablet.comeIn(rig, noor);
    tablet.sent(tablet.item(tablet.work(1), 2, "hand-down", null));
    var late = tablet.item(tablet.work(1), 1, "help", null);
    late.put("age", 30_000);
    tablet.sent(late);
    assertEquals(List.of(), raised());
  }

  @Test
  void aHandOfAnotherChildCanNotBePutDown() {
    Tablet noors = Tablet.comeIn(rig, noor);
    Tablet elsies = Tablet.comeIn(rig, rig.children.get(1));
    noors.sent(noors.item(noors.work(1), 1, "help", null));
    assertEquals("[[\"" + noors.work(1) + "\",\"" + elsies.page + "\",1,\"unknown\"]]",
        elsies.sent(elsies.item(noors.work(1), 1, "hand-down", null)).path("refused").toString());
    assertEquals(1, raised().size());
  }

  @Test
  void theTabletsVoiceIsKeptForItsSitting() {
    Tablet tablet = Tablet.comeIn(rig, noor);
    assertEquals(Map.of(), rig.services.voices.said(rig.classroom.id()));
    for (String voice : List.of("none", "local")) {
      assertEquals(200, tablet.browser.postJson("/voice", "{\"sitting\":\"" + tablet.sitting + "\",\"key\":\""
          + tablet.key + "\",\"voice\":\"" + voice + "\"}").statusCode());
      assertEquals(Map.of(tablet.sitting, voice), rig.services.voices.said(rig.classroom.id()));
    }
    assertEquals(422, tablet.browser.postJson("/voice", "{\"sitting\":\"" + tablet.sitting + "\",\"key\":\""
        + tablet.key + "\",\"voice\":\"parrot\"}").statusCode());
  }

  @Test
  void whatAChildPointedAtIsShownToTheTeacherAndIsNoMark() {
    Tablet tablet = Tablet.comeIn(rig, noor);
    tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", new Work("52 - 14 = x", "38", "shells", null, null,
        new Reading("Tomas has 52 shells.", List.of("52")))));
    Browser teacher = new Browser(rig.teacherAddress());
    teacher.get("/sign-in");
    teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
    String page = teacher.get("/work/" + tablet.work(1) + "/" + tablet.page + "/1").body();
    assertTrue(page.contains("Took “Tomas has 52 shells.” for the question."), page);
    assertTrue(page.contains("Did not tap 14."), page);
    assertTrue(rig.services.works.state(noor.id(), rig.set.problems().get(0).id()).lastHandIn().marks().equals(
        fewermore.marking.Marker.mark(rig.set.problems().get(0).story(), new Work("52 - 14 = x", "38", "shells", null,
            null))), "the same marks with it and without");
  }

  @Test
  void theTeacherRecordsAProblemPlaysItKeepsItAndThrowsItAway() {
    List<String> complaints = new ArrayList<>();
    long problem = rig.set.problems().get(0).id();
    try (BrowserContext laptop = Chromium.tablet(new NewContextOptions().setViewportSize(1366, 768)
        .setPermissions(List.of("microphone")))) {
      Page page = laptop.newPage();
      page.onPageError(complaints::add);
      page.onConsoleMessage(message -> {
        if (message.type().equals("error")) {
          complaints.add(message.text());
        }
      });
      page.navigate("http://localhost:" + rig.app.teacherPort() + "/sign-in");
      page.fill("input[name=passphrase]", Rig.PASSPHRASE);
      page.keyboard().press("Enter");
      page.waitForURL("**/plan");
      page.click("a[href='/voice/" + problem + "']");
      page.click("[data-record]");
      page.waitForSelector("[data-state] >> text=/Recording, 1 s/");
      page.click("[data-record]");
      page.waitForSelector("[data-state] >> text=Recorded, not kept yet.");
      assertEquals(List.of(), new AxeBuilder(page).setLegacyMode(true).analyze().getViolations());
      page.click("[data-play]");
      page.waitForSelector("[data-play] >> text=Stop playing");
      page.waitForSelector("[data-play] >> text=/^Play$/");
      assertFalse(rig.services.voices.recorded(problem, "en"), "not before it is kept");
      page.click("[data-keep]");
      page.waitForSelector("[data-state] >> text=Recorded. Tablets use it.");
      byte[] sound = rig.services.voices.recording(problem, "en").orElseThrow();
      assertTrue(Wav.usable(sound));
      boolean silent = true;
      for (int at = 44; at < sound.length; at++) {
        silent &= sound[at] == 0;
      }
      assertFalse(silent, "the microphone was heard");
      Tablet tablet = Tablet.comeIn(rig, noor);
      assertTrue(tablet.problems.get(0).path("recorded").asBoolean());
      assertFalse(tablet.problems.get(1).path("recorded").asBoolean());
      assertEquals("audio/wav", tablet.browser.get("/voice/" + tablet.work(1)).headers().firstValue("Content-Type")
          .orElse(""));
      assertEquals(404, tablet.browser.get("/voice/" + tablet.work(2)).statusCode());
      page.click("text=Throw it away");
      page.waitForSelector("[data-state] >> text=Not recorded yet.");
      assertFalse(rig.services.voices.recorded(problem, "en"));
    }
    assertEquals(List.of(), complaints, "the browser's console");
  }

  @Test
  void aRecordingIsKeptWholeUpToHalfAMinute() {
    byte[] longest = new byte[Wav.MOST_BYTES];
    new java.util.Random(4).nextBytes(longest);
    long problem = rig.set.problems().get(0).id();
    rig.services.voices.keep(problem, "en", longest, rig.now());
    assertArrayEquals(longest, rig.services.voices.recording(problem, "en").orElseThrow());
    assertFalse(Wav.usable(longest), "noise is no WAV file");
  }
}
