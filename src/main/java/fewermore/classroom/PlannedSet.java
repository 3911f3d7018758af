package fewermore.classroom;

import java.util.Set;

/**
 * A set as the teacher plans it.
 *
 * @param name hers, or empty
 * @param kept whether it stands among the sets she keeps to use again
 * @param children whom it is for, by id; empty for the whole class
 */
public record PlannedSet(ProblemSet set, String name, boolean kept, Set<Long> children) {
  public PlannedSet {
    children = Set.copyOf(children);
  }

  public boolean isFor(long child) {
    return children.isEmpty() || children.contains(child);
  }

  public boolean given() {
    return set.given();
  }
}
