package fewermore.classroom;

import java.util.List;

/**
 * All that one child handed in on one problem.
 *
 * @param handIns at least one, in the order they were written
 * @param withHelp whether an adult worked with her: kept and marked, never evidence of how she reasons
 */
public record PieceOfWork(Child child, AssignedProblem problem, List<HandIn> handIns, boolean withHelp) {
  /** Work the child did on her own. */
  public PieceOfWork(Child child, AssignedProblem problem, List<HandIn> handIns) {
    this(child, problem, handIns, false);
  }

  public PieceOfWork {
    handIns = List.copyOf(handIns);
    if (handIns.isEmpty()) {
      throw new IllegalArgumentException("a piece of work has at least one hand-in");
    }
  }

  /**
   * The hand-in that counts as evidence: the first. Where the child sent again from the same sitting
   * before any prompt was shown, the later one is the first.
   */
  public HandIn evidence() {
    HandIn evidence = handIns.get(0);
    for (HandIn next : handIns.subList(1, handIns.size())) {
      boolean beforeAnyPrompt = evidence.told() == null && next.sitting().equals(evidence.sitting());
      if (!beforeAnyPrompt) {
        break;
      }
      evidence = next;
    }
    return evidence;
  }

  /** The last try; the evidence itself when there was no other. */
  public HandIn last() {
    return handIns.get(handIns.size() - 1);
  }

  public int tries() {
    return handIns.size();
  }
}
