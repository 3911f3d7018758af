package fewermore.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;

import fewermore.classroom.PieceOfWork;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What was read of a class is kept, and is at every moment what reading it anew gives. */
class KeptPiecesTest {
  private static final Instant SINCE = Instant.parse("2026-11-01T00:00:00Z");

  @TempDir Path temp;

  @Test
  void afterEveryChangeWhatIsKeptIsWhatReadingAnewGives() {
    try (Database database = Stores.open(temp)) {
      SchoolDay day = new SchoolDay(database, 4, false, "k");
      WorkStore works = new WorkStore(database);
      sameAsAnew(works, database, day);
      day.handIn(0, "page", 1);
      day.handIn(1, "page", 1);
      sameAsAnew(works, database, day);
      day.handIn(1, "page", 2);
      sameAsAnew(works, database, day);
      database.change(handle -> handle.execute("UPDATE child SET name = 'Another' WHERE name = 'k1'"));
      sameAsAnew(works, database, day);
      database.change(handle -> handle.execute("UPDATE mark SET verdict = 'blank' WHERE part = 'label'"));
      sameAsAnew(works, database, day);
      database.change(handle -> handle.execute("UPDATE work SET with_help = TRUE"));
      sameAsAnew(works, database, day);
    }
  }

  private static void sameAsAnew(WorkStore works, Database database, SchoolDay day) {
    List<PieceOfWork> kept = works.pieces(day.classroom.id(), SINCE);
    assertEquals(new WorkStore(database).pieces(day.classroom.id(), SINCE), kept);
    assertEquals(new WorkStore(database).pieces(day.classroom.id()), kept);
  }

  @Test
  void aHandInReadsOnlyThatChildAnew() {
    try (Database database = Stores.open(temp)) {
      SchoolDay day = new SchoolDay(database, 2, false, "o");
      WorkStore works = new WorkStore(database);
      day.handIn(0, "page", 1);
      day.handIn(1, "page", 1);
      List<PieceOfWork> before = works.pieces(day.classroom.id(), SINCE);
      day.handIn(1, "page", 2);
      List<PieceOfWork> after = works.pieces(day.classroom.id(), SINCE);
      assertSame(before.get(0), after.get(0));
      assertNotSame(before.get(1), after.get(1));
      assertEquals(2, after.get(1).handIns().size());
    }
  }

  @Test
  void whatIsNotRememberedMayHaveBeenAnything() {
    Changes changes = new Changes();
    changes.committed(Set.of("w1"));
    long then = changes.now();
    assertEquals(Optional.of(Set.of()), changes.since(then));
    changes.committed(Set.of("w2"));
    changes.committed(Set.of());
    assertEquals(Optional.of(Set.of("w2")), changes.since(then));
    changes.committed();
    assertEquals(Optional.empty(), changes.since(then));
    then = changes.now();
    for (int at = 0; at < 5_000; at++) {
      changes.committed(Set.of("w3"));
    }
    assertEquals(Optional.empty(), changes.since(then));
  }
}
