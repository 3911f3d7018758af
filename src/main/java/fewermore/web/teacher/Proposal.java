package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.ChildReasoning;
import fewermore.classroom.TellsMore;
import fewermore.problem.ProposedMix;
import fewermore.reasoning.ReasoningTable;
import fewermore.story.Kind;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The mix Plan proposes: teaching first, then what would tell most about these children. Without work, the usual mix.
 *
 * @param kinds in order
 * @param why in one sentence
 * @param whyNot why nothing is said yet of who reads the story, or empty
 * @param children whom it is for; empty for the whole class
 */
public record Proposal(List<Kind> kinds, String why, String whyNot, List<Child> children) {
  public Proposal {
    kinds = List.copyOf(kinds);
    children = List.copyOf(children);
  }

  /**
   * @param reasoning of the whole class
   * @param children whom it is for; empty for the whole class
   * @param problems how many, from 1
   */
  public static Proposal of(Collection<ChildReasoning> reasoning, Collection<Child> children, int problems) {
    List<ChildReasoning> about = reasoning.stream()
        .filter(each -> children.isEmpty() || children.contains(each.child())).toList();
    boolean work = about.stream().anyMatch(each -> !each.counted().isEmpty());
    return new Proposal(work ? TellsMore.mix(about, problems, ReasoningTable.standard()) : ProposedMix.of(problems),
        work ? "It begins with one that " + (about.size() == 1 ? "this child is" : "most are")
            + " likely to do well; the others would tell most about how "
            + (children.isEmpty() ? "this class" : about.size() == 1 ? "this child" : "this group") + " reasons now."
            : "There is no work to go by yet: this mix tells most about a class nobody knows.",
        TellsMore.whyNot(about), List.copyOf(children));
  }

  /** How many have a word that points the other way: only those tell who reads the story. */
  public long telling() {
    return kinds.stream().filter(kind -> !kind.agrees()).count();
  }

  /** "Amara, Ben and Chloe"; empty for the whole class. */
  public String names() {
    List<String> names = children.stream().map(Child::name).toList();
    return names.size() < 2 ? String.join("", names)
        : names.stream().limit(names.size() - 1L).collect(Collectors.joining(", ")) + " and " + names.get(names.size() - 1);
  }
}
