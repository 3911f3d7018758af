package fewermore.store;

import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;

/**
 * Erases a child or a whole class: from the tables, from the data file (which is written anew, since a deleted row
 * stays readable in it) and from the copies the app made.
 */
public final class Erasing {
  /** What became of it. */
  public enum Fate { GONE, REQUEST_OPEN, NOT_THERE }

  /** @param remains a sentence for each copy that could not be freed of it */
  public record Erased(Fate fate, List<String> remains) {}

  private final Database database;
  private final Copies copies;

  public Erasing(Database database, Copies copies) {
    this.database = database;
    this.copies = copies;
  }

  /** Erases a child of that class and all her work. Held while her family's request is open. */
  public Erased child(long classroom, long child) {
    return rest(database.write(handle -> {
      if (count(handle, "SELECT COUNT(*) FROM child WHERE id = :id AND classroom_id = " + classroom, child) == 0) {
        return Fate.NOT_THERE;
      }
      if (count(handle, "SELECT COUNT(*) FROM child WHERE id = :id AND request_on IS NOT NULL", child) > 0) {
        return Fate.REQUEST_OPEN;
      }
      HangingRows.delete(handle, "child", child);
      return Fate.GONE;
    }));
  }

  /** Erases a class with all its children and work. Held while any family's request is open. */
  public Erased classroom(long teacher, long classroom) {
    return rest(database.write(handle -> {
      if (count(handle, "SELECT COUNT(*) FROM classroom WHERE id = :id AND teacher_id = " + teacher, classroom) == 0) {
        return Fate.NOT_THERE;
      }
      if (count(handle, "SELECT COUNT(*) FROM child WHERE classroom_id = :id AND request_on IS NOT NULL", classroom)
          > 0) {
        return Fate.REQUEST_OPEN;
      }
      ClassStore.throwAway(handle, classroom);
      return Fate.GONE;
    }));
  }

  private Erased rest(Fate fate) {
    if (fate != Fate.GONE) {
      return new Erased(fate, List.of());
    }
    List<String> remains = new ArrayList<>();
    if (!database.rewrite()) {
      remains.add("The data file could not be written anew and still holds what was erased, though no page shows it. "
          + "Make room on the disk; it goes when the next child or class is erased.");
    }
    if (database.inSchool()) {
      remains.add("Backups that the school made of its database hold what was erased as long as they are kept. Tell whoever "
          + "looks after it.");
    }
    remains.addAll(copies.somethingWasErased());
    return new Erased(fate, List.copyOf(remains));
  }

  private static long count(Handle handle, String query, long id) {
    return handle.createQuery(query).bind("id", id).mapTo(Long.class).one();
  }
}
