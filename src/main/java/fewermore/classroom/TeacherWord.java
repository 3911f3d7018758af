package fewermore.classroom;

import java.util.List;
import java.util.Optional;

/** What the teacher said beside the evidence of her class: work taken out, ways put aside. */
public record TeacherWord(List<TakenOut> takenOut, List<PutAside> putAside) {
  public static final TeacherWord NONE = new TeacherWord(List.of(), List.of());

  public TeacherWord {
    takenOut = List.copyOf(takenOut);
    putAside = List.copyOf(putAside);
  }

  /** Why this piece does not count, or empty when it does. Work done with help never counts. */
  public Optional<TakenOut> takenOut(PieceOfWork piece) {
    return piece.withHelp() ? Optional.of(TakenOut.withHelp(piece))
        : takenOut.stream().filter(each -> each.covers(piece)).findFirst();
  }

  /** What was put aside for this child, the latest first. */
  public List<PutAside> putAside(Child child) {
    return putAside.stream().filter(each -> each.child() == child.id()).toList();
  }
}
