package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import fewermore.store.OfTheFile;
import org.junit.jupiter.api.Test;

class SignInTest {
  /** A clock the test moves. */
  private static final class Hands extends Clock {
    private Instant now = Instant.parse("2026-11-25T15:00:00Z");

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }
  }

  private static HttpResponse<String> tries(Rig rig, Browser browser, String passphrase) {
    browser.get("/sign-in");
    return browser.post("/sign-in", Map.of("passphrase", passphrase));
  }

  @Test
  void aWrongPassphraseWaitsLongerEachTimeAndNeverForGood() {
    Hands clock = new Hands();
    try (Rig rig = Rig.start(clock)) {
      Browser browser = new Browser(rig.teacherAddress());
      for (int wrong = 1; wrong <= 3; wrong++) {
        assertEquals(422, tries(rig, browser, "not the passphrase").statusCode(), "try " + wrong);
      }
      assertEquals(429, tries(rig, browser, Rig.PASSPHRASE).statusCode(), "even the right one waits");
      clock.now = clock.now.plusSeconds(1);
      assertEquals(422, tries(rig, browser, "").statusCode());
      clock.now = clock.now.plusSeconds(1);
      assertEquals(429, tries(rig, browser, Rig.PASSPHRASE).statusCode(), "the second wait is longer");
      clock.now = clock.now.plus(Duration.ofMinutes(2));
      String before = browser.cookies.get("desk");
      assertEquals(303, tries(rig, browser, Rig.PASSPHRASE).statusCode());
      assertNotEquals(before, browser.cookies.get("desk"), "signing in makes a new session");
      assertEquals(200, browser.get("/findings").statusCode());
      clock.now = clock.now.plus(Duration.ofHours(13));
      assertEquals(303, browser.get("/findings").statusCode(), "a session ends after half a day");
    }
  }

  @OfTheFile("what it holds")
  @Test
  void thePassphraseIsKeptAsAnArgonHashOnly() throws Exception {
    try (Rig rig = Rig.start()) {
      String kept = rig.services.teachers.first().orElseThrow().passphrase();
      assertTrue(kept.startsWith("$argon2id$v=19$m=19456,t=2,p=1$"), kept.substring(0, 20));
      rig.services.teachers.set("anything", "so that the file was written");
      byte[] file = Files.readAllBytes(rig.folder.resolve("fewermore.mv.db"));
      assertEquals(-1, new String(file, java.nio.charset.StandardCharsets.ISO_8859_1).indexOf(Rig.PASSPHRASE));
    }
  }
}
