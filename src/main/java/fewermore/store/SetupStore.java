package fewermore.store;

import fewermore.classroom.Child;
import fewermore.classroom.ClassSetup;
import fewermore.marking.Part;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How classes are set up, who may stand in for the teacher, and children who change, leave and come back. */
public final class SetupStore {
  /** A substitute's way into one class. @param passphrase its Argon2id hash; @param note the teacher's own words to her */
  public record Substitute(long classroom, String className, long teacher, String passphrase, String note) {}

  /** A child who left the class, with her record still kept. */
  public record LeftChild(Child child, LocalDate on) {}

  private final Database database;

  public SetupStore(Database database) {
    this.database = database;
  }

  /** How a class is set up; the class must be there. */
  public ClassSetup of(long classroom) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT usual_tries, usual_parts, tell_later, kept_until, closed_on
              FROM classroom
             WHERE id = :classroom""")
        .bind("classroom", classroom)
        .map((row, at) -> new ClassSetup(row.getInt("usual_tries"),
            Stream.of(row.getString("usual_parts").split(" ")).flatMap(id -> Part.of(id).stream())
                .collect(Collectors.toSet()),
            row.getBoolean("tell_later"), Rows.day(row, "kept_until"), Rows.day(row, "closed_on")))
        .one());
  }

  /** The classes of a year that is over: they can only be read. */
  public Set<Long> closed() {
    return database.read(handle -> new HashSet<>(handle
        .createQuery("SELECT id FROM classroom WHERE closed_on IS NOT NULL ORDER BY id")
        .mapTo(Long.class)
        .list()));
  }

  /** Keeps how a class is set up, its name and its time zone. Days already stored do not move. */
  public void set(long classroom, String name, ZoneId zone, ClassSetup setup) {
    database.change(handle -> handle
        .createUpdate("""
            UPDATE classroom
               SET name = :name, time_zone = :zone, usual_tries = :tries, usual_parts = :parts, tell_later = :later,
                   kept_until = :kept, closed_on = :closed
             WHERE id = :classroom""")
        .bind("name", name)
        .bind("zone", zone.getId())
        .bind("tries", setup.usualTries())
        .bind("parts", setup.usualParts().stream().sorted(Comparator.naturalOrder()).map(Part::id)
            .collect(Collectors.joining(" ")))
        .bind("later", setup.tellLater())
        .bind("kept", setup.keptUntil())
        .bind("closed", setup.closedOn())
        .bind("classroom", classroom)
        .execute());
  }

  // ---- substitutes ----

  /** Every class a substitute may come into, in the order of the classes. */
  public List<Substitute> substitutes() {
    return database.read(handle -> handle
        .createQuery("""
            SELECT s.classroom_id, k.name, k.teacher_id, s.passphrase, s.note
              FROM substitute s
              JOIN classroom k ON k.id = s.classroom_id
             WHERE k.closed_on IS NULL
             ORDER BY s.classroom_id""")
        .map((row, at) -> new Substitute(row.getLong("classroom_id"), row.getString("name"), row.getLong("teacher_id"),
            row.getString("passphrase"), row.getString("note")))
        .list());
  }

  public Optional<Substitute> substitute(long classroom) {
    return substitutes().stream().filter(each -> each.classroom == classroom).findFirst();
  }

  /** Lets a substitute in with this passphrase (as its hash); the one before ends. */
  public void letIn(long classroom, String passphrase, Instant now) {
    database.change(handle -> {
      int changed = handle
          .createUpdate("""
              UPDATE substitute
                 SET passphrase = :passphrase, made_at = :now
               WHERE classroom_id = :classroom""")
          .bind("passphrase", passphrase)
          .bind("now", Database.utc(now))
          .bind("classroom", classroom)
          .execute();
      if (changed == 0) {
        handle
            .createUpdate("""
                INSERT INTO substitute (classroom_id, passphrase, made_at)
                VALUES (:classroom, :passphrase, :now)""")
            .bind("classroom", classroom)
            .bind("passphrase", passphrase)
            .bind("now", Database.utc(now))
            .execute();
      }
    });
  }

  /** What the teacher tells her substitute, at most 2,000 characters. */
  public void tellSubstitute(long classroom, String note) {
    database.change(handle -> handle
        .createUpdate("""
            UPDATE substitute
               SET note = :note
             WHERE classroom_id = :classroom""")
        .bind("note", note)
        .bind("classroom", classroom)
        .execute());
  }

  public void takeBack(long classroom) {
    database.change(handle -> handle
        .createUpdate("DELETE FROM substitute WHERE classroom_id = :classroom")
        .bind("classroom", classroom)
        .execute());
  }

  // ---- children ----

  /** Changes a child's name, picture and language. True when she is in this class. */
  public boolean change(Child child) {
    return database.write(handle -> handle
        .createUpdate("""
            UPDATE child
               SET name = :name, picture = :picture, ground = :ground, language = :language
             WHERE id = :child
               AND classroom_id = :classroom""")
        .bind("name", child.name())
        .bind("picture", child.picture())
        .bind("ground", child.ground())
        .bind("language", child.language())
        .bind("child", child.id())
        .bind("classroom", child.classroom())
        .execute() == 1);
  }

  /** A child leaves the class; her record stays. */
  public boolean leave(long classroom, long child, LocalDate day, Instant now) {
    return database.write(handle -> {
      handle
          .createUpdate("""
              UPDATE sitting
                 SET ended_at = :now, ended_why = 'left the class'
               WHERE child_id = :child
                 AND ended_at IS NULL""")
          .bind("now", Database.utc(now))
          .bind("child", child)
          .execute();
      return handle
          .createUpdate("""
              UPDATE child
                 SET left_on = :day
               WHERE id = :child
                 AND classroom_id = :classroom
                 AND left_on IS NULL""")
          .bind("day", day)
          .bind("child", child)
          .bind("classroom", classroom)
          .execute() == 1;
    });
  }

  public boolean comeBack(long classroom, long child) {
    return database.write(handle -> handle
        .createUpdate("""
            UPDATE child
               SET left_on = NULL
             WHERE id = :child
               AND classroom_id = :classroom""")
        .bind("child", child)
        .bind("classroom", classroom)
        .execute() == 1);
  }

  /** The children who left, in the order of their names. */
  public List<LeftChild> left(long classroom) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT id, classroom_id, name, picture, ground, language, left_on
              FROM child
             WHERE classroom_id = :classroom
               AND left_on IS NOT NULL
             ORDER BY name, id""")
        .bind("classroom", classroom)
        .map((row, at) -> new LeftChild(ClassStore.child(row), Rows.day(row, "left_on")))
        .list());
  }

  /** A child of this class, there or gone. */
  public Optional<Child> child(long classroom, long child) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT id, classroom_id, name, picture, ground, language
              FROM child
             WHERE classroom_id = :classroom
               AND id = :child""")
        .bind("classroom", classroom)
        .bind("child", child)
        .map((row, at) -> ClassStore.child(row))
        .findOne());
  }

  /** The school's own ids of the children here, from earlier imports. */
  public Set<String> rosterIds(long classroom) {
    return database.read(handle -> new HashSet<>(handle
        .createQuery("""
            SELECT roster_id
              FROM child
             WHERE classroom_id = :classroom
               AND roster_id <> ''
             ORDER BY id""")
        .bind("classroom", classroom)
        .mapTo(String.class)
        .list()));
  }
}
