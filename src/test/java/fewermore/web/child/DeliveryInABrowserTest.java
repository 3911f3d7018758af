package fewermore.web.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Page;
import fewermore.web.child.TabletStage.Line;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Work is never lost: on the way from a change on the tablet to the laptop's disk. */
class DeliveryInABrowserTest extends OnATablet {
  private static final String THEIRS = "Your teacher has it.";
  private static final String SEEN = "Your teacher can see it. Not handed in yet.";
  private static final String KEPT = "Kept on this tablet.It goes when the Wi-Fi is back.";
  private static final String KEEP = "Keep this page open.";

  private void answer(String digits) {
    tab("answer");
    keys("answer", digits);
  }

  private void handInAnyway() {
    handIn();
    page.click("[data-ask-box] [data-anyway]");
  }

  private int stored(String start) {
    return ((Number) page.evaluate("start => Object.keys(localStorage).filter(key => key.startsWith(start)).length",
        start)).intValue();
  }

  @Test
  void aDraftGoesByItselfAndIsNotCalledHandedIn() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    assertEquals("", delivery());
    answer("38");
    assertTrue(delivery().startsWith("Kept on this tablet."));
    deliverySays(SEEN);
    assertEquals("38", lastParts("draft").path("answer").asText());
    assertEquals(0, stored("fw.d."));
  }

  @Test
  void handedInOfflineItWaitsOnTheTabletAndGoesOnceWhenTheLineIsBack() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    tablet.setOffline(true);
    answer("38");
    handInAnyway();
    deliverySays(KEPT);
    page.waitForTimeout(500);
    assertEquals(0, stage.kept("handed-in").size());
    assertEquals(1, stored("fw.h."));
    tablet.setOffline(false);
    deliverySays(THEIRS);
    assertEquals(1, stage.kept("handed-in").size());
    assertEquals(0, stored("fw.h."));
  }

  @Test
  void anAcknowledgementThatGotLostIsAskedForAgainAndNothingIsThereTwice() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    stage.line = Line.LOSES_ANSWERS;
    answer("38");
    handInAnyway();
    until("sent at least twice", () -> stage.workRequests.get() >= 2);
    deliverySays(KEPT);
    stage.line = Line.OPEN;
    deliverySays(THEIRS);
    assertEquals(1, stage.kept("handed-in").size());
  }

  @ParameterizedTest
  @EnumSource(names = {"CAPTIVE_PORTAL", "SENDS_ELSEWHERE"})
  void aPageOfTheSchoolsWiFiIsNoAcknowledgement(Line portal) {
    open(Samples.shells(1, null, null));
    openProblem(1);
    stage.line = portal;
    answer("38");
    handInAnyway();
    until("asked twice", () -> stage.workRequests.get() >= 2);
    deliverySays(KEPT);
    assertEquals(1, stored("fw.h."));
    stage.line = Line.OPEN;
    deliverySays(THEIRS);
  }

  @Test
  void whenTheLaptopStartsAgainNothingThatWasTypedMeanwhileIsLost() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    int port = stage.port();
    answer("3");
    stage.stop();
    keys("answer", "8");
    page.waitForTimeout(2500);
    assertEquals(KEPT, delivery());
    stage.start(port);
    until("delivered within 40 s", 40, () -> delivery().equals(SEEN));
    assertEquals("38", lastParts("draft").path("answer").asText());
  }

  @Test
  void afterAReloadTheNewestOfTabletAndLaptopIsShown() {
    open(Samples.shells(1, new Draft(new fewermore.marking.Work("", "7", "", null, null), 60_000, false), null));
    openProblem(1);
    tab("answer");
    assertEquals("7", page.inputValue("[data-for=answer] [data-field]"));
    stage.line = Line.CLOSED;
    keys("answer", "9");
    page.navigate(stage.address("/mine#1-answer"));
    page.reload();
    page.waitForSelector("[data-for=answer]:not([hidden])");
    assertEquals("79", page.inputValue("[data-for=answer] [data-field]"));
    stage.line = Line.OPEN;
    until("the old page's draft goes too", () -> stage.kept("draft").stream()
        .anyMatch(draft -> draft.at("/parts/answer").asText().equals("79")));
  }

  @Test
  void whereTheTabletKeepsNothingThePageSaysSoAndStillSends() {
    tablet.addInitScript("Storage.prototype.setItem = () => { throw new Error('full'); };");
    open(Samples.shells(1, null, null));
    openProblem(1);
    stage.line = Line.CLOSED;
    answer("38");
    deliverySays(KEEP);
    stage.line = Line.OPEN;
    deliverySays(SEEN);
  }

  @Test
  void whenTheTabletIsFullThePageSaysSoAndAHandInStillGoes() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    page.evaluate("for (let at = 0; at < 205; at += 1) localStorage.setItem(`fw.x.${at}`, 'x')");
    stage.line = Line.CLOSED;
    answer("38");
    deliverySays(KEEP);
    stage.line = Line.OPEN;
    handInAnyway();
    deliverySays(THEIRS);
    assertEquals("38", lastParts("handed-in").path("answer").asText());
  }

  @Test
  void refusedWorkIsKeptAndShownToTheTeacherAndNotSentAgainAndAgain() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    stage.line = Line.REFUSES;
    for (int status : new int[] {403, 400}) {
      stage.refusal = status;
      answer("3");
      handInAfterTheFirst();
      deliverySays("Show your teacher.");
      int requests = stage.workRequests.get();
      page.waitForTimeout(1500);
      assertTrue(stage.workRequests.get() <= requests + 1, "no storm of tries after " + status);
      assertTrue(stored("fw.h.") > 0, "kept");
    }
  }

  @Test
  void aPieceThatIsTooBigIsKeptShownAndNotSentAgainForAWholeMinute() {
    page.clock().install();
    open(Samples.shells(1, null, null));
    openProblem(1);
    stage.line = Line.REFUSES;
    stage.refusal = 413;
    answer("3");
    page.click("[data-hand-in]");
    page.click("[data-ask-box] [data-anyway]");
    page.clock().runFor(3_000);
    deliverySays("Show your teacher.");
    int requests = stage.workRequests.get();
    page.clock().runFor(60_000);
    page.waitForTimeout(300);
    assertTrue(stage.workRequests.get() <= requests + 1, stage.workRequests.get() - requests + " requests in a minute");
    assertEquals(1, stored("fw.h."), "kept");
  }

  @Test
  void workOfAChildWhoWasErasedLeavesTheTablet() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    stage.line = Line.ERASED;
    answer("38");
    handInAnyway();
    until("gone from the tablet", () -> stored("fw.h.") == 0 && stored("fw.d.") == 0);
    assertEquals(0, stage.revisions.size());
  }

  @Test
  void whereTheStorageIsReallyFullThePageSaysSoAndStillSends() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    page.evaluate("for (let size = 1 << 20; size >= 1; size >>= 1) { try { for (let at = 0; at < 99; at += 1)"
        + " localStorage.setItem(`other.${size}.${at}`, 'x'.repeat(size)); } catch (full) { /* smaller ones */ } }");
    stage.line = Line.CLOSED;
    answer("38");
    deliverySays(KEEP);
    stage.line = Line.OPEN;
    deliverySays(SEEN);
    assertEquals("38", lastParts("draft").path("answer").asText());
  }

  private void handInAfterTheFirst() {
    page.waitForTimeout(850);
    handIn();
    if (page.isVisible("[data-ask-box]")) {
      page.click("[data-ask-box] [data-anyway]");
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {3, -3})
  void aWrongClockOnTheTabletChangesNoAge(int days) {
    tablet.addInitScript("const now = Date.now; Date.now = () => now.call(Date) + (" + days + ") * 86400000;");
    open(Samples.shells(1, null, null));
    openProblem(1);
    answer("38");
    deliverySays(SEEN);
    long age = stage.kept("draft").get(0).path("age").asLong(-1);
    assertTrue(age >= 0 && age < 10_000, age + " ms");
  }

  @Test
  void onASharedTabletWaitingWorkStaysItsOwnChildsAndNoNameIsStored() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    tablet.setOffline(true);
    answer("38");
    handInAnyway();
    page.click("[data-back]");
    page.click("[data-leave] button");
    page.waitForSelector(".closed");
    assertFalse(page.content().contains("Noor"), "the name left the page");
    assertFalse(page.content().contains("Theo found"), "the work left the page");
    assertEquals("1 piece of work waits here for the Wi-Fi.", page.textContent("[data-waiting]").trim());
    assertTrue(page.url().contains("/mine"), "no page is fetched before the laptop answers");

    Page second = newPage();
    tablet.setOffline(false);
    stage.line = Line.CLOSED;
    stage.sitting = new SittingPage("en", new Me("Elsie", new ShownPicture("pear", "moss")), "s2", "k2",
        List.of(Samples.shells(1, null, null)));
    second.navigate(stage.address("/mine#1-answer"));
    second.waitForSelector("[data-for=answer]:not([hidden])");
    assertEquals("", second.inputValue("[data-for=answer] [data-field]"), "a sitting never reads another's work");
    String stored = (String) second.evaluate("JSON.stringify(localStorage)");
    for (String name : Samples.NAMES) {
      assertFalse(stored.contains(name), name);
    }
    stage.line = Line.OPEN;
    until("the first child's work arrives", 40, () -> !stage.kept("handed-in").isEmpty());
    assertTrue(stage.revisions.keySet().stream().anyMatch(name -> name.startsWith("s1 w1")));
    assertTrue(stage.revisions.entrySet().stream().filter(each -> each.getKey().startsWith("s2 "))
        .noneMatch(each -> each.getValue().at("/parts/answer").asText().equals("38")), "not under the second child");
  }

  @Test
  void anOpenPageClosesItselfWhenTheNextChildComesIn() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    page.waitForTimeout(20);
    Page second = newPage();
    stage.sitting = new SittingPage("en", new Me("Elsie", new ShownPicture("pear", "moss")), "s2", "k2",
        List.of(Samples.shells(1, null, null)));
    second.navigate(stage.address("/mine"));
    page.waitForSelector(".closed");
    assertFalse(page.content().contains("Noor"));
  }

  @Test
  void afterIAmDoneTheBackButtonShowsNoWork() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    answer("38");
    page.click("[data-back]");
    page.click("[data-leave] button");
    page.waitForURL("**/come-in");
    assertEquals(1, stage.kept("leave").size());
    stage.sitting = Samples.sitting("en");
    page.goBack();
    page.waitForTimeout(300);
    assertFalse(page.content().contains("Theo found"));
    assertEquals(0, page.locator("[data-for=answer]").count());
  }

  @Test
  void twoTabsOfOneSittingBothArriveUnderTheirOwnNumbers() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    Page second = newPage();
    second.navigate(stage.address("/mine#1-answer"));
    second.waitForSelector("[data-for=answer]:not([hidden])");
    answer("1");
    second.click("[data-for=answer] [data-key='2']");
    until("both", 15, () -> stage.kept("draft").stream().map(each -> each.path("page").asText()).distinct().count() == 2);
  }

  @Test
  void comingInShowsHowMuchWaitsAndSendsIt() {
    open(Samples.shells(1, null, null));
    openProblem(1);
    stage.line = Line.CLOSED;
    answer("38");
    handInAnyway();
    page.navigate(stage.address("/come-in"));
    page.waitForSelector("[data-waiting]:not([hidden])");
    assertEquals("1 piece of work waits here for the Wi-Fi.", page.textContent("[data-waiting]").trim());
    stage.line = Line.OPEN;
    gone("[data-waiting]");
    assertEquals(1, stage.kept("handed-in").size());
  }
}
