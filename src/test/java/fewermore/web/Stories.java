package fewermore.web;

import fewermore.store.ProblemStore.NewProblem;
import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.util.List;

/** Problems written by hand for tests of pages and protocol. */
public final class Stories {
  private Stories() {}

  /** 52 shells, 14 fewer: 38. */
  public static final NewProblem SHELLS = new NewProblem(
      new Comparison(new Persons("Tomas", "Ines"), new Thing("shell", "shells"), null, List.of(),
          new Relation(52, 38, 14), Role.SMALLER, Wording.FEWER, List.of()),
      "shells", 1,
      List.of("Tomas has 52 shells.", "Ines has 14 fewer shells than Tomas.", "How many shells does Ines have?"),
      List.of());

  /** 15 beads, 19 fewer than Theo: Theo has 34. The word points the other way. */
  public static final NewProblem BEADS = new NewProblem(
      new Comparison(new Persons("Theo", "Mara"), new Thing("bead", "beads"), null, List.of(),
          new Relation(34, 15, 19), Role.LARGER, Wording.FEWER, List.of()),
      "beads", 2,
      List.of("Mara has 15 beads.", "Mara has 19 fewer beads than Theo.", "How many beads does Theo have?"),
      List.of());

  /** 61 stamps, 23 more than Lena: Lena has 38. The word points the other way. */
  public static final NewProblem STAMPS = new NewProblem(
      new Comparison(new Persons("Omar", "Lena"), new Thing("stamp", "stamps"), null, List.of(),
          new Relation(61, 38, 23), Role.SMALLER, Wording.MORE, List.of()),
      "stamps", 3,
      List.of("Omar has 61 stamps.", "Omar has 23 more stamps than Lena.", "How many stamps does Lena have?"),
      List.of());
}
