package fewermore.store;

import fewermore.classroom.Child;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Desk cards, by the hash of what is printed on them, and the children's picture secrets. */
public final class CardStore {
  /** A card in use. @param address the address printed on it */
  public record Card(Child child, String address, LocalDate goodUntil, Instant madeAt) {}

  private final Database database;

  public CardStore(Database database) {
    this.database = database;
  }

  /**
   * Makes cards; those the same children had before let nobody in any more.
   *
   * @param hashes by child: the hash of the new card's letters
   */
  public void make(Map<Long, String> hashes, String address, LocalDate goodUntil, Instant now) {
    database.change(handle -> hashes.forEach((child, hash) -> {
      revoke(handle, "child_id = :id", child, now);
      handle
          .createUpdate("""
              INSERT INTO card (child_id, token, address, good_until, made_at)
              VALUES (:child, :hash, :address, :until, :now)""")
          .bind("child", child)
          .bind("hash", hash)
          .bind("address", address)
          .bind("until", goodUntil)
          .bind("now", Database.utc(now))
          .execute();
    }));
  }

  public void revoke(long child, Instant now) {
    database.change(handle -> revoke(handle, "child_id = :id", child, now));
  }

  public void revokeAll(long classroom, Instant now) {
    database.change(handle ->
        revoke(handle, "child_id IN (SELECT id FROM child WHERE classroom_id = :id)", classroom, now));
  }

  private static void revoke(Handle handle, String which, long id, Instant now) {
    handle
        .createUpdate("UPDATE card SET revoked_at = :now WHERE revoked_at IS NULL AND " + which)
        .bind("now", Database.utc(now))
        .bind("id", id)
        .execute();
  }

  /** The cards of a class that still let in, in the order of its list. */
  public List<Card> cards(long classroom) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT c.id, c.classroom_id, c.name, c.picture, c.ground, c.language,
                   k.address, k.good_until, k.made_at
              FROM card k
              JOIN child c ON c.id = k.child_id
             WHERE c.classroom_id = :classroom
               AND c.left_on IS NULL
               AND k.revoked_at IS NULL
             ORDER BY c.place, c.id""")
        .bind("classroom", classroom)
        .map((row, at) -> new Card(new Child(row.getLong("id"), row.getLong("classroom_id"), row.getString("name"),
            row.getString("picture"), row.getString("ground"), row.getString("language")), row.getString("address"),
            Rows.day(row, "good_until"), Rows.instant(row, "made_at")))
        .list());
  }

  /** Whose card this is, while it lets in: not revoked, and good on the given day of its class. */
  public Optional<Card> card(String hash) {
    return database.read(handle -> handle
        .createQuery("""
            SELECT c.id, c.classroom_id, c.name, c.picture, c.ground, c.language,
                   k.address, k.good_until, k.made_at
              FROM card k
              JOIN child c ON c.id = k.child_id
             WHERE k.token = :hash
               AND c.left_on IS NULL
               AND k.revoked_at IS NULL""")
        .bind("hash", hash)
        .map((row, at) -> new Card(new Child(row.getLong("id"), row.getLong("classroom_id"), row.getString("name"),
            row.getString("picture"), row.getString("ground"), row.getString("language")), row.getString("address"),
            Rows.day(row, "good_until"), Rows.instant(row, "made_at")))
        .findOne());
  }

  // ---- picture secrets ----

  public boolean asksSecret(long classroom) {
    return database.read(handle -> handle
        .createQuery("SELECT asks_secret FROM classroom WHERE id = :classroom")
        .bind("classroom", classroom)
        .mapTo(Boolean.class)
        .findOne()
        .orElse(false));
  }

  public void askSecret(long classroom, boolean ask) {
    database.change(handle -> handle
        .createUpdate("UPDATE classroom SET asks_secret = :ask WHERE id = :classroom")
        .bind("ask", ask)
        .bind("classroom", classroom)
        .execute());
  }

  /** The two pictures of each child of a class, by child; nothing for a child that has none yet. */
  public Map<Long, List<String>> secrets(long classroom) {
    return database.read(handle -> {
      Map<Long, List<String>> secrets = new java.util.LinkedHashMap<>();
      handle
          .createQuery("SELECT id, secret FROM child WHERE classroom_id = :classroom AND secret <> '' ORDER BY place, id")
          .bind("classroom", classroom)
          .map((row, at) -> Map.entry(row.getLong("id"), List.of(row.getString("secret").split(" "))))
          .forEach(entry -> secrets.put(entry.getKey(), entry.getValue()));
      return secrets;
    });
  }

  /** Sets the two pictures of children, by child. */
  public void setSecrets(Map<Long, List<String>> secrets) {
    database.change(handle -> secrets.forEach((child, pictures) -> handle
        .createUpdate("UPDATE child SET secret = :secret WHERE id = :child")
        .bind("secret", String.join(" ", pictures))
        .bind("child", child)
        .execute()));
  }
}
