package fewermore.store;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** Classes and the children in them. */
public final class ClassStore {
  /** A child to be added: all but what the store gives. */
  public record NewChild(String name, String picture, String ground, String language, String rosterId) {
    /** A child whose school's id is not known. */
    public NewChild(String name, String picture, String ground, String language) {
      this(name, picture, ground, language, "");
    }
  }

  private static final RowMapper<Classroom> CLASSROOM = (row, at) -> new Classroom(
      row.getLong("id"), row.getLong("teacher_id"), row.getString("name"), ZoneId.of(row.getString("time_zone")),
      row.getBoolean("invented"), Rows.instant(row, "made_at"));

  private static final RowMapper<Child> CHILD = (row, at) -> child(row);

  static Child child(ResultSet row) throws SQLException {
    return new Child(row.getLong("id"), row.getLong("classroom_id"), row.getString("name"), row.getString("picture"),
        row.getString("ground"), row.getString("language"));
  }

  private final Database database;

  public ClassStore(Database database) {
    this.database = database;
  }

  /** The teacher's classes, oldest first. */
  public List<Classroom> of(long teacher) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT id, teacher_id, name, time_zone, invented, made_at
              FROM classroom
             WHERE teacher_id = :teacher
             ORDER BY id""")
        .bind("teacher", teacher)
        .map(CLASSROOM)
        .list());
  }

  /** Every class there is. */
  public List<Classroom> all() {
    return database.read(handle -> handle
        .createQuery("""
            SELECT id, teacher_id, name, time_zone, invented, made_at
              FROM classroom
             ORDER BY id""")
        .map(CLASSROOM)
        .list());
  }

  /** A class by its id, whoever's it is: for the tablets' side, which comes in by the class's own door. */
  public Optional<Classroom> find(long classroom) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT id, teacher_id, name, time_zone, invented, made_at
              FROM classroom
             WHERE id = :classroom""")
        .bind("classroom", classroom)
        .map(CLASSROOM)
        .findOne());
  }

  /** Makes a class with its children, in the order given. */
  public Classroom add(
      long teacher, String name, ZoneId zone, boolean invented, List<NewChild> children, Instant now) {
    return database.write(handle -> {
      long id = handle
          .createUpdate("""
              INSERT INTO classroom (teacher_id, name, time_zone, invented, made_at)
              VALUES (:teacher, :name, :zone, :invented, :now)""")
          .bind("teacher", teacher)
          .bind("name", name)
          .bind("zone", zone.getId())
          .bind("invented", invented)
          .bind("now", Database.utc(now))
          .executeAndReturnGeneratedKeys("id")
          .mapTo(Long.class)
          .one();
      addChildren(handle, id, 0, children, now);
      return new Classroom(id, teacher, name, zone, invented, now);
    });
  }

  /** Adds children to a class, after those already there. */
  public void addChildren(long classroom, List<NewChild> children, Instant now) {
    database.change(handle -> {
      int last = handle
          .createQuery("""
              SELECT COALESCE(MAX(place), 0)
                FROM child
               WHERE classroom_id = :classroom""")
          .bind("classroom", classroom)
          .mapTo(Integer.class)
          .one();
      addChildren(handle, classroom, last, children, now);
    });
  }

  private static void addChildren(Handle handle, long classroom, int last, List<NewChild> children, Instant now) {
    int place = last;
    for (NewChild child : children) {
      handle
          .createUpdate("""
              INSERT INTO child (classroom_id, name, picture, ground, language, place, made_at, roster_id)
              VALUES (:classroom, :name, :picture, :ground, :language, :place, :now, :roster)""")
          .bind("classroom", classroom)
          .bind("name", child.name())
          .bind("picture", child.picture())
          .bind("ground", child.ground())
          .bind("language", child.language())
          .bind("place", ++place)
          .bind("roster", child.rosterId())
          .bind("now", Database.utc(now))
          .execute();
    }
  }

  /** The children now in a class, in the order of its list. */
  public List<Child> children(long classroom) {
    return database.read(handle -> children(handle, classroom));
  }

  static List<Child> children(Handle handle, long classroom) {
    return handle
        .createQuery("""
            SELECT id, classroom_id, name, picture, ground, language
              FROM child
             WHERE classroom_id = :classroom
               AND left_on IS NULL
             ORDER BY place, id""")
        .bind("classroom", classroom)
        .map(CHILD)
        .list();
  }

  /** A child, if she is in that class. */
  public Optional<Child> child(long classroom, long child) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT id, classroom_id, name, picture, ground, language
              FROM child
             WHERE classroom_id = :classroom
               AND id = :child
               AND left_on IS NULL""")
        .bind("classroom", classroom)
        .bind("child", child)
        .map(CHILD)
        .findOne());
  }

  /** Throws an invented class away with all its work; a real class is never touched. True when it was there. */
  public boolean throwAway(long teacher, long classroom) {
    return database.write(handle -> {
      boolean invented = handle
          .createQuery("""
              SELECT COUNT(*)
                FROM classroom
               WHERE id = :classroom
                 AND teacher_id = :teacher
                 AND invented = TRUE""")
          .bind("classroom", classroom)
          .bind("teacher", teacher)
          .mapTo(Long.class)
          .one() == 1;
      if (invented) {
        SittingStore.rememberErased(handle, SittingStore.hashes(handle, classroom));
        throwAway(handle, classroom);
      }
      return invented;
    });
  }

  /** Removes a class and all that hangs on it. */
  static void throwAway(Handle handle, long classroom) {
    HangingRows.delete(handle, "classroom", classroom);
    handle
        .createUpdate("DELETE FROM tablet WHERE id LIKE :invented")
        .bind("invented", SittingStore.inventedTablets(classroom))
        .execute();
  }
}
