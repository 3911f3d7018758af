package fewermore.store;

import fewermore.json.Json;
import fewermore.json.SpanishJson;
import fewermore.wording.Holder;
import fewermore.wording.Noun;
import fewermore.wording.TeachersSpanish;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jdbi.v3.core.Handle;

/** Spanish a teacher gave for words that are not ours. */
public final class SpanishStore {
  private final Database database;

  public SpanishStore(Database database) {
    this.database = database;
  }

  /** All she gave, the newest for each word. */
  public TeachersSpanish of(long teacher) {
    return database.read(handle -> of(handle, teacher));
  }

  static TeachersSpanish of(Handle handle, long teacher) {
    List<Noun> nouns = new ArrayList<>();
    List<Holder> holders = new ArrayList<>();
    handle
        .createQuery("""
            SELECT words
              FROM spanish_word
             WHERE teacher_id = :teacher
             ORDER BY id""")
        .bind("teacher", teacher)
        .mapTo(String.class)
        .forEach(words -> {
          TeachersSpanish one = SpanishJson.read(Json.read(words));
          nouns.addAll(one.nouns());
          holders.addAll(one.holders());
        });
    return new TeachersSpanish(nouns, holders);
  }

  /** Keeps these words; one given before for the same English is replaced. */
  public void keep(long teacher, TeachersSpanish given, Instant now) {
    database.write(handle -> {
      given.nouns().forEach(noun ->
          put(handle, teacher, noun.many(), new TeachersSpanish(List.of(noun), List.of()), now));
      given.holders().forEach(holder ->
          put(handle, teacher, holder.english(), new TeachersSpanish(List.of(), List.of(holder)), now));
      return null;
    });
  }

  private static void put(Handle handle, long teacher, String english, TeachersSpanish words, Instant now) {
    String key = english.toLowerCase(Locale.ROOT);
    handle
        .createUpdate("""
            DELETE FROM spanish_word
             WHERE teacher_id = :teacher
               AND english = :english""")
        .bind("teacher", teacher)
        .bind("english", key)
        .execute();
    handle
        .createUpdate("""
            INSERT INTO spanish_word (teacher_id, english, words, made_at)
            VALUES (:teacher, :english, :words, :now)""")
        .bind("teacher", teacher)
        .bind("english", key)
        .bind("words", Json.write(SpanishJson.write(words)))
        .bind("now", Database.utc(now))
        .execute();
  }
}
