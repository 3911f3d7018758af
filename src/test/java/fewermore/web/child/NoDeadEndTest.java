package fewermore.web.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.marking.Part;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Wherever a child is, and whatever is still empty, there is a way on. */
class NoDeadEndTest extends OnATablet {
  private static final List<Part> ALL = List.of(Part.values());

  /** Each part after each other part, in one walk: every pair once. */
  private static List<Part> everyPartAfterEveryOther() {
    List<Part> walk = new ArrayList<>(List.of(ALL.get(0)));
    List<String> gone = new ArrayList<>();
    int pairs = ALL.size() * (ALL.size() - 1);
    assertTrue(goOn(walk, gone, pairs));
    return walk;
  }

  private static boolean goOn(List<Part> walk, List<String> gone, int pairs) {
    if (gone.size() == pairs) {
      return true;
    }
    Part here = walk.get(walk.size() - 1);
    for (Part next : ALL) {
      String pair = here + " " + next;
      if (next != here && !gone.contains(pair)) {
        gone.add(pair);
        walk.add(next);
        if (goOn(walk, gone, pairs)) {
          return true;
        }
        walk.remove(walk.size() - 1);
        gone.remove(gone.size() - 1);
      }
    }
    return false;
  }

  /** Working it out has the whole page, and one way back to the other parts. */
  private void thereIsAWayOn(Part here) {
    assertTrue(page.locator("[data-undo]").isVisible(), "undo in " + here);
    if (here == Part.STRATEGY) {
      page.click("[data-to-my-work]");
      gone("[data-for=strategy]");
    }
    for (Part other : ALL) {
      assertTrue(page.locator("[data-part=" + other.id() + "]").isVisible(), "from " + here + " to " + other);
    }
    assertTrue(page.locator("[data-back]").isVisible(), "back from " + here);
    assertTrue(page.locator("[data-hand]").isEnabled(), "the teacher can be asked from " + here);
    assertTrue(page.locator("[data-hand-in]").isVisible() && page.locator("[data-hand-in]").isEnabled(),
        "it can be handed in from " + here);
  }

  @Test
  void withNothingFilledInEveryPartLeadsToEveryOtherAndToTheEnd() {
    open(Samples.asking(ALL, Samples.shells(1, null, null)), Samples.beads(2));
    openProblem(1);
    for (Part part : everyPartAfterEveryOther()) {
      tab(part.id());
      thereIsAWayOn(part);
    }
    page.waitForTimeout(850);
    handIn();
    page.click("[data-ask-box] [data-go]");
    thereIsAWayOn(Part.BARS);
    page.waitForTimeout(850);
    handIn();
    page.waitForSelector("[data-next-problem]:not([hidden])");
    assertEquals(0, page.locator("dialog[open]").count());
    page.click("[data-next-problem]");
    page.waitForSelector("[data-for=bars]:not([hidden])");
    assertTrue(page.url().contains("#2"));
  }

  @Test
  void askedAboutAHoleItCanBeHandedInAsItIs() {
    open(Samples.asking(ALL, Samples.shells(1, null, null)));
    openProblem(1);
    handIn();
    page.click("[data-ask-box] [data-anyway]");
    page.waitForSelector("[data-next-problem]:not([hidden])");
    until("handed in", () -> stage.kept("handed-in").size() == 1);
    page.click("[data-next-problem]");
    page.waitForSelector("[data-problems]:not([hidden])");
  }

  /** Each way to work it out, empty, with its keys open, and a question for a number put away. */
  @Test
  void noWayToWorkItOutHoldsAChildFast() {
    open(Samples.asking(ALL, Samples.shells(1, null, null)));
    openProblem(1);
    tab("strategy");
    for (String kind : List.of("pieces", "line", "expanded")) {
      page.locator("[data-for=strategy] [data-kind=" + kind + "]:visible").first().click();
      page.waitForSelector("[data-way=" + kind + "]:not([hidden])");
      page.click(switch (kind) {
        case "pieces" -> "[data-way=pieces] [data-count]";
        case "line" -> "[data-start]";
        default -> "[data-cell='first-tens']";
      });
      page.waitForSelector("[data-pad]:not([hidden])");
      assertTrue(page.locator("[data-pad] [data-key=ready]").isDisabled(), "an empty number is none");
      page.click("[data-pad] [data-key=away]");
      assertFalse(page.isVisible("[data-pad]"));
      assertTrue(page.locator("[data-to-my-work]").isVisible(), kind);
      thereIsAWayOnFromTheStrategy(kind);
    }
  }

  private void thereIsAWayOnFromTheStrategy(String kind) {
    page.click("[data-to-my-work]");
    assertEquals(0, page.locator("[data-for=strategy]:visible").count(), "out of " + kind);
    tab("strategy");
  }
}
