package fewermore.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Teachers and their passphrases (hashed), and the app's own settings. */
public final class TeacherStore {
  /** A teacher who may sign in; {@code passphrase} is its Argon2id hash. */
  public record Teacher(long id, String name, String passphrase) {}

  private final Database database;

  public TeacherStore(Database database) {
    this.database = database;
  }

  /** The first teacher of this laptop, or nothing before the first visit. */
  public Optional<Teacher> first() {
    return database.read(handle -> handle
        .createQuery("""
            SELECT id, name, passphrase
              FROM teacher
             ORDER BY id
             LIMIT 1""")
        .map((row, at) -> new Teacher(row.getLong("id"), row.getString("name"), row.getString("passphrase")))
        .findOne());
  }

  /** Every teacher of this laptop, in the order they were added. */
  public List<Teacher> all() {
    return database.read(handle -> handle
        .createQuery("""
            SELECT id, name, passphrase
              FROM teacher
             ORDER BY id""")
        .map((row, at) -> new Teacher(row.getLong("id"), row.getString("name"), row.getString("passphrase")))
        .list());
  }

  public Optional<Teacher> find(long teacher) {
    return all().stream().filter(each -> each.id() == teacher).findFirst();
  }

  /** How she is called on the sign-in page and under a conference page: 1 to 80 characters. */
  public void rename(long teacher, String name) {
    database.change(handle -> handle
        .createUpdate("""
            UPDATE teacher
               SET name = :name
             WHERE id = :teacher""")
        .bind("name", name)
        .bind("teacher", teacher)
        .execute());
  }

  /** Sets another passphrase, as its hash. */
  public void changePassphrase(long teacher, String passphrase) {
    database.change(handle -> handle
        .createUpdate("""
            UPDATE teacher
               SET passphrase = :passphrase
             WHERE id = :teacher""")
        .bind("passphrase", passphrase)
        .bind("teacher", teacher)
        .execute());
  }

  /** Adds a teacher, unless one is there already and {@code onlyFirst}. */
  public Optional<Teacher> add(String name, String passphrase, boolean onlyFirst, Instant now) {
    return database.write(handle -> {
      long there = handle.createQuery("SELECT COUNT(*) FROM teacher").mapTo(Long.class).one();
      if (onlyFirst && there > 0) {
        return Optional.empty();
      }
      long id = handle
          .createUpdate("""
              INSERT INTO teacher (name, passphrase, made_at)
              VALUES (:name, :passphrase, :now)""")
          .bind("name", name)
          .bind("passphrase", passphrase)
          .bind("now", Database.utc(now))
          .executeAndReturnGeneratedKeys("id")
          .mapTo(Long.class)
          .one();
      return Optional.of(new Teacher(id, name, passphrase));
    });
  }

  public Optional<String> setting(String name) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT content
              FROM setting
             WHERE name = :name""")
        .bind("name", name)
        .mapTo(String.class)
        .findOne());
  }

  public void set(String name, String content) {
    database.change(handle -> {
      int changed = handle
          .createUpdate("""
              UPDATE setting
                 SET content = :content
               WHERE name = :name""")
          .bind("name", name)
          .bind("content", content)
          .execute();
      if (changed == 0) {
        handle
            .createUpdate("""
                INSERT INTO setting (name, content)
                VALUES (:name, :content)""")
            .bind("name", name)
            .bind("content", content)
            .execute();
      }
    });
  }
}
