package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.ProblemSet;
import fewermore.marking.Part;
import fewermore.marking.Work;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What a child meets when there is nothing to do, or all are to look up; and the estimate of a plain form. */
class NothingToDoYetTest {
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

  @Test
  void aChildForWhomNoSetIsMeantIsToldKindlyAndFindsItsProblemsWhenThereAreSome() {
    Classroom other = rig.services.classes.add(rig.services.teachers.first().orElseThrow().id(), "Room 14",
        ZoneId.of("America/Chicago"), false, Rig.children("Ada", "Bo"), rig.now());
    List<Child> children = rig.services.classes.children(other.id());
    var today = rig.services.today(other);
    ProblemSet forBo = rig.services.problems.addSet(other.id(), today, false, 3, false, Rig.FOUR_PARTS,
        List.of(Stories.BEADS), rig.now());
    assertTrue(rig.services.plans.settle(other.id(), forBo.id(), today, List.of(children.get(1).id()), 3, false,
        Rig.FOUR_PARTS));
    rig.services.problems.give(other.id(), forBo.id());
    Tablet tablet = comeIn(other, children.get(0));
    assertEquals(0, tablet.problems.size(), "what is for Bo is not for Ada");
    String page = tablet.browser.get("/mine").body();
    assertTrue(page.contains("There are no problems for you yet."), page);
    assertTrue(page.contains("href=\"/mine\""), "a way to look again");
    assertEquals(1, comeIn(other, children.get(1)).problems.size());
    rig.services.problems.addSet(other.id(), today, true, 3, false, Rig.FOUR_PARTS, List.of(Stories.SHELLS), rig.now());
    tablet.load();
    assertEquals(1, tablet.problems.size());
  }

  private Tablet comeIn(Classroom classroom, Child child) {
    Tablet tablet = new Tablet(rig);
    assertEquals(303, tablet.browser.get("/in/" + rig.services.door(classroom).token()).statusCode());
    tablet.browser.get("/come-in/" + child.id());
    assertEquals(303, tablet.browser.post("/come-in/" + child.id(), Map.of()).statusCode());
    tablet.load();
    return tablet;
  }

  @Test
  void aPauseIsSaidOnThePlainPagesTooAndHandingInStillWorks() {
    Tablet tablet = Tablet.comeIn(rig, noor);
    String sentence = "Look at your teacher. Your work stays as it is.";
    for (String path : List.of("/mine", "/mine/" + tablet.work(1))) {
      assertFalse(tablet.browser.get(path).body().contains(sentence), path);
    }
    rig.services.pauses.pause(rig.classroom.id(), rig.now());
    for (String path : List.of("/mine", "/mine/" + tablet.work(1))) {
      assertTrue(tablet.browser.get(path).body().contains(sentence), path);
    }
    assertEquals(303, tablet.browser.post("/mine/" + tablet.work(1), Map.of("equation", "52 - 14 = ?")).statusCode());
    rig.services.pauses.goOn(rig.classroom.id(), rig.now());
    assertFalse(tablet.browser.get("/mine/" + tablet.work(1)).body().contains(sentence));
  }

  private String handIn(Tablet tablet, long problem, String number, String side) {
    Map<String, String> form = new HashMap<>(Map.of("estimate", number));
    if (side != null) {
      form.put("estimateSide", side);
    }
    assertEquals(303, tablet.browser.post("/mine/" + tablet.work(tablet.problems.size()), form).statusCode());
    Work work = rig.services.works.state(noor.id(), problem).lastHandIn().parts();
    return work.estimate();
  }

  @Test
  void onAPlainFormTheEstimateThatIsNewCountsANumberOrASide() {
    long problem = rig.services.problems.addSet(rig.classroom.id(), rig.services.today(rig.classroom), true, 9, false,
        Set.of(Part.ANSWER, Part.ESTIMATE), List.of(Stories.SHELLS), rig.now()).problems().get(0).id();
    Tablet tablet = Tablet.comeIn(rig, noor);
    assertEquals(200, tablet.browser.get("/mine/" + tablet.work(tablet.problems.size())).statusCode(), "with nothing yet");
    assertEquals("40", handIn(tablet, problem, "40", null));
    assertEquals("smaller than 52", handIn(tablet, problem, "40", "smaller than 52"), "a side beside the number of before");
    String page = tablet.browser.get("/mine/" + tablet.work(tablet.problems.size())).body();
    assertTrue(page.contains("value=\"smaller than 52\" checked=\"checked\""), page);
    assertFalse(page.contains("value=\"40\""));
    assertEquals("30", handIn(tablet, problem, "30", "smaller than 52"), "a number beside the side of before");
    assertEquals("", handIn(tablet, problem, "", null));
  }
}
