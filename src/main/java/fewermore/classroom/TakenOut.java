package fewermore.classroom;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Work that is no evidence of how a child reasons. It stays in the record and is shown as taken out.
 *
 * @param id 0 for work that is out because it is marked as done with help
 * @param child 0 for the whole class
 */
public record TakenOut(long id, long child, long problem, Why why, LocalDate day) {
  /** Why the teacher took it out. */
  public enum Why {
    BOARD("walked-on-the-board", "walked on the Board"),
    COPIED("copied", "copied"),
    TOGETHER("together", "done together"),
    WITH_HELP("with-help", "done with help"),
    MOVED("moved", "moved from another child");

    private final String id;
    private final String word;

    Why(String id, String word) {
      this.id = id;
      this.word = word;
    }

    public String id() {
      return id;
    }

    /** As it stands behind "taken out:". */
    public String word() {
      return word;
    }

    public static Optional<Why> of(String id) {
      for (Why why : values()) {
        if (why.id.equals(id)) {
          return Optional.of(why);
        }
      }
      return Optional.empty();
    }
  }

  /** Work that is marked as done with help: it is out as long as that mark stands, and has no id of its own. */
  static TakenOut withHelp(PieceOfWork piece) {
    return new TakenOut(0, piece.child().id(), piece.problem().id(), Why.WITH_HELP, piece.evidence().day());
  }

  public boolean covers(PieceOfWork piece) {
    return piece.problem().id() == problem && (child == 0 || child == piece.child().id());
  }
}
