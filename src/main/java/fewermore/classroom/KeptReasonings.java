package fewermore.classroom;

import fewermore.reasoning.ReasoningTable;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;

/**
 * What was worked out of each child's work last. It is used again only while the work is the very same as then (the same
 * objects, in the same order) and the teacher's word too, so it never says anything else than working it out anew.
 */
public final class KeptReasonings {
  private record Entry(List<PieceOfWork> work, TeacherWord word, ReasoningTable table, ChildReasoning reasoning) {}

  private final Map<Child, Entry> kept = new HashMap<>();

  synchronized ChildReasoning of(Child child, List<PieceOfWork> work, TeacherWord word, ReasoningTable table) {
    Entry before = kept.get(child);
    if (before != null && before.table == table && before.word.equals(word) && same(before.work, work)) {
      return before.reasoning;
    }
    ChildReasoning reasoning = ChildReasoning.of(child, work, word, table);
    kept.put(child, new Entry(List.copyOf(work), word, table, reasoning));
    return reasoning;
  }

  /** Forgets the children of other classes: one class is looked at at a time. */
  synchronized void keepOnly(Iterable<Child> children) {
    Map<Child, Entry> only = new HashMap<>();
    for (Child child : children) {
      Entry entry = kept.get(child);
      if (entry != null) {
        only.put(child, entry);
      }
    }
    kept.clear();
    kept.putAll(only);
  }

  private static boolean same(List<PieceOfWork> before, List<PieceOfWork> now) {
    if (before.size() != now.size()) {
      return false;
    }
    Iterator<PieceOfWork> other = before.iterator();
    for (PieceOfWork piece : now) {
      if (piece != other.next()) {
        return false;
      }
    }
    return true;
  }
}
