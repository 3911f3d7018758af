package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.ChildReasoning;
import fewermore.classroom.PlannedSet;
import fewermore.classroom.TeacherWord;
import fewermore.classroom.TellsMore;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Work;
import fewermore.problem.ProposedMix;
import fewermore.reasoning.ReasoningTable;
import fewermore.story.Kind;
import fewermore.web.teacher.PlanPage;
import fewermore.wording.Gender;
import fewermore.wording.Noun;
import fewermore.wording.TeachersSpanish;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Plan goes by what the class's work says, and asks for the Spanish it does not know. */
class PlanTellsTest {
  private static final String GIZMOS =
      "Ana has 21 gizmos. Ben has 5 fewer gizmos than Ana. How many gizmos does Ben have?";

  private Rig rig;
  private Browser teacher;

  @BeforeEach
  void start() {
    rig = Rig.start();
    teacher = RouteTableTest.signedInTo(rig);
  }

  @AfterEach
  void stop() {
    rig.close();
  }

  private List<PlannedSet> sets() {
    return rig.services.plans.sets(rig.classroom.id(), rig.services.today(rig.classroom));
  }

  private static List<Kind> kinds(PlannedSet set) {
    return set.set().problems().stream().map(AssignedProblem::kind).toList();
  }

  private Map<String, String> fields(String... pairs) {
    Map<String, String> fields = new HashMap<>(Map.of("day", rig.services.today(rig.classroom).toString(), "set", "0"));
    for (int at = 0; at < pairs.length; at += 2) {
      fields.put(pairs[at], pairs[at + 1]);
    }
    return fields;
  }

  @Test
  void withoutWorkTheUsualMixIsProposedAndWithWorkWhatTellsMostAboutThisClass() {
    assertTrue(teacher.get("/plan?set=new").body().contains("There is no work to go by yet"));
    assertEquals(303, teacher.post("/plan", fields("mix", "proposed", "within", "100", "regroup", "either")).statusCode());
    assertEquals(ProposedMix.of(PlanPage.PROPOSED), kinds(sets().get(1)));

    for (Child child : rig.children) {
      Tablet tablet = Tablet.comeIn(rig, child);
      for (int problem = 1; problem <= 2; problem++) {
        tablet.sent(tablet.item(tablet.work(problem), problem, "handed-in", new Work("52 + 14 = x", "66", "shells", null, null)));
      }
    }
    List<Kind> tells = TellsMore.mix(FindingsHandlers.found(rig.services, rig.classroom,
        rig.services.today(rig.classroom)).children(), PlanPage.PROPOSED, ReasoningTable.standard());
    String page = teacher.get("/plan?set=new").body();
    assertTrue(page.contains("would tell most about how this class reasons now"), page);
    teacher.post("/plan", fields("mix", "proposed", "within", "100", "regroup", "either"));
    assertEquals(tells, kinds(sets().get(2)), "in the order proposed");
    assertNotEquals(ProposedMix.of(PlanPage.PROPOSED), tells, "or else this says nothing");
  }

  @Test
  void aSetForAGroupIsMadeFromGroupsForItsChildrenAlone() {
    for (Child child : rig.children) {
      Tablet tablet = Tablet.comeIn(rig, child);
      tablet.sent(tablet.item(tablet.work(1), 1, "handed-in", new Work("52 + 14 = x", "66", "shells", null, null)));
    }
    Matcher link = Pattern.compile("href=\"(/plan\\?set=new[^\"]*)\"").matcher(teacher.get("/groups").body());
    assertTrue(link.find());
    String address = link.group(1).replace("&amp;", "&");
    Set<Long> group = new LinkedHashSet<>();
    Matcher child = Pattern.compile("for=(\\d+)").matcher(address);
    while (child.find()) {
      group.add(Long.parseLong(child.group(1)));
    }
    assertFalse(group.isEmpty());
    String page = teacher.get(address).body();
    String first = rig.children.stream().filter(each -> group.contains(each.id())).findFirst().orElseThrow().name();
    assertTrue(page.replaceAll("<[^>]*>", "").contains("For " + first), "it says for whom");
    String one = Long.toString(group.iterator().next());
    teacher.post("/plan", fields("mix", "proposed", "within", "50", "regroup", "either", "for", one));
    PlannedSet made = sets().get(sets().size() - 1);
    assertEquals(Set.of(Long.parseLong(one)), made.children());
    assertEquals(PlanPage.PROPOSED, made.set().problems().size());
    teacher.post("/plan", fields("mix", "proposed", "within", "50", "regroup", "either", "for", "987654"));
    assertEquals(Set.of(), sets().get(sets().size() - 1).children(), "no child of another class");
  }

  @Test
  void theSpanishOfAnUnknownNounIsAskedForKeptAndOfferedAgain() {
    teacher.get("/plan/type");
    String asked = teacher.post("/plan/look", fields("text", GIZMOS)).body();
    assertTrue(asked.contains("name=\"es-one-0\""), "it asks");
    assertTrue(asked.contains("children who read Spanish see this one in English"));
    Map<String, String> given = fields("text", GIZMOS, "es-noun-0", "gizmos", "es-one-0", "chisme", "es-many-0", "chismes",
        "es-gender-0", "m");
    String shown = teacher.post("/plan/look", given).body();
    assertTrue(shown.contains("ntos chismes tiene Ben?"), "and shows the Spanish");
    teacher.get("/plan/type");
    assertEquals(303, teacher.post("/plan/type", given).statusCode());
    AssignedProblem kept = sets().get(1).set().problems().get(0);
    assertEquals("¿Cuántos chismes tiene Ben?", kept.spanish().get(2));
    String again = teacher.post("/plan/look", fields("text", GIZMOS.replace("21", "34"))).body();
    assertTrue(again.contains("Ana tiene 34 chismes."), "offered the next time");
    Map<String, String> half = fields("text", GIZMOS.replace("gizmo", "zorble"), "es-noun-0", "zorbles", "es-one-0", "x",
        "es-many-0", "<b>", "es-gender-0", "m");
    assertTrue(teacher.post("/plan/look", half).body().contains("children who read Spanish see this one in English"));
  }

  @Test
  void aLabelInTheTeachersSpanishNamesWhatIsCounted() {
    rig.services.spanish.keep(rig.classroom.teacher(), new TeachersSpanish(
        List.of(new Noun("zorble", "zorbles", "rueda", "ruedas", Gender.FEMININE)), List.of()), rig.now());
    teacher.get("/plan/type");
    teacher.post("/plan/type", fields("text", GIZMOS.replace("gizmo", "zorble")));
    PlannedSet made = sets().get(sets().size() - 1);
    rig.services.problems.give(rig.classroom.id(), made.set().id());
    Tablet tablet = Tablet.comeIn(rig, rig.children.get(0));
    tablet.sent(tablet.item(tablet.work(3), 1, "handed-in", new Work("21 - 5 = x", "16", "ruedas", null, null)));
    assertEquals(List.of(LabelVerdict.NAMES_IT), rig.services.works.piecesOf(rig.children.get(0)).stream()
        .flatMap(piece -> piece.handIns().stream()).map(handIn -> handIn.marks().label()).toList());
  }

  @Test
  void anEarlyFinishersNextProblemIsTheOneThatTellsMostAboutHerAndNeverTheLastKindAgain() {
    Child noor = rig.children.get(0);
    Tablet tablet = Tablet.comeIn(rig, noor);
    for (int problem = 1; problem <= 2; problem++) {
      tablet.sent(tablet.item(tablet.work(problem), problem, "handed-in", new Work("52 + 14 = x", "66", "shells", null, null)));
    }
    var work = rig.services.works.piecesOf(noor);
    ReasoningTable table = ReasoningTable.standard();
    ChildReasoning reasoning = ChildReasoning.of(noor, work, TeacherWord.NONE, table);
    Kind next = MoreProblems.WHAT_TELLS_MOST.next(noor, work, List.of(rig.set), TeacherWord.NONE, Set.of(), 7).story().kind();
    assertEquals(TellsMore.next(List.of(reasoning), reasoning.lastKind(), table), next);
    assertNotEquals(reasoning.lastKind(), next);
  }
}
