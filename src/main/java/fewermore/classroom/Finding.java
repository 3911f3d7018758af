package fewermore.classroom;

import java.util.ArrayList;
import java.util.List;

/**
 * One statement about some children's work, with the work behind it.
 *
 * @param topic what the statement says
 * @param children the children it is said of, strongest first
 * @param early children whose work points the same way but is too little to say anything; not counted
 */
public record Finding(Topic topic, List<ChildFinding> children, List<ChildFinding> early) {
  public Finding {
    children = List.copyOf(children);
    early = List.copyOf(early);
  }

  /** What the evidence of the counted children said, what speaks against included. */
  public Tally tally() {
    Tally all = Tally.NONE;
    for (ChildFinding child : children) {
      all = all.plus(child.tally());
    }
    return all;
  }

  /** The counted children, then those of whom it is too early to say it. */
  public List<ChildFinding> shown() {
    List<ChildFinding> shown = new ArrayList<>(children);
    shown.addAll(early);
    return shown;
  }
}
