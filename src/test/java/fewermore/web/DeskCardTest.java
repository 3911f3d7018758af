package fewermore.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.store.OfTheFile;
import fewermore.web.child.SecretPage;
import fewermore.web.teacher.QrPicture;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Coming in by a desk card, and by two secret pictures. */
class DeskCardTest {
  private final Hands clock = new Hands("2026-11-25T15:00:00Z");
  private Rig rig;
  private Browser teacher;

  @BeforeEach
  void start() {
    rig = Rig.start(clock);
    teacher = new Browser(rig.teacherAddress());
    teacher.get("/sign-in");
    teacher.post("/sign-in", Map.of("passphrase", Rig.PASSPHRASE));
    teacher.get("/setup/cards");
  }

  @AfterEach
  void stop() {
    rig.close();
  }

  /** A card for a child, made as the teacher's page makes it, with letters the test knows. */
  private String card(int child, LocalDate until) {
    String letters = rig.services.tokens.card();
    rig.services.cards.make(Map.of(rig.children.get(child).id(), CardDoor.hash(letters)), rig.tabletAddress(), until,
        rig.now());
    return letters;
  }

  private LocalDate today() {
    return rig.services.today(rig.classroom);
  }

  @Test
  void aCardAsksAndOnlyTheAnswerChangesAnything() {
    String letters = card(1, today());
    long before = rig.services.sittings.tablets();
    for (String path : List.of("/c/" + letters, "/C/" + letters, "/C/" + letters.toLowerCase(), "/c/" + letters)) {
      HttpResponse<String> page = new Browser(rig.tabletAddress()).get(path);
      assertEquals(200, page.statusCode(), path);
      assertTrue(page.body().contains("Elsie"), path);
      assertEquals("no-referrer", page.headers().firstValue("Referrer-Policy").orElse(""));
    }
    assertEquals(before, rig.services.sittings.tablets(), "looking at a card changes nothing");
    assertEquals(List.of(), rig.services.sittings.open(rig.classroom.id()));
    Browser tablet = new Browser(rig.tabletAddress());
    tablet.get("/C/" + letters);
    assertEquals(303, tablet.post("/c/" + letters, Map.of()).statusCode());
    assertTrue(tablet.get("/mine").body().contains("Elsie"));
    assertEquals("Elsie", rig.services.sittings.open(rig.classroom.id()).get(0).child().name());
    assertFalse(tablet.get("/come-in").body().contains("Noor"), "a card shows no other child's name");
  }

  @Test
  void aCardIsGoodUntilItsDayIsOverAndUntilItIsRevoked() {
    String letters = card(0, today());
    String other = card(1, today());
    Browser tablet = new Browser(rig.tabletAddress());
    assertEquals(200, tablet.get("/c/" + letters).statusCode());
    assertEquals(303, teacher.post("/setup/cards/revoke",
        Map.of("child", Long.toString(rig.children.get(0).id()))).statusCode());
    assertEquals(404, tablet.get("/c/" + letters).statusCode());
    assertEquals(200, tablet.get("/c/" + other).statusCode(), "one is revoked alone");
    assertEquals(303, teacher.post("/setup/cards/revoke", Map.of()).statusCode());
    HttpResponse<String> over = tablet.get("/c/" + other);
    assertEquals(404, over.statusCode());
    assertTrue(over.body().contains("This card is not used any more. Show it to your teacher."));
    String third = card(2, today());
    clock.now = clock.now.plus(Duration.ofDays(1));
    assertEquals(404, tablet.get("/c/" + third).statusCode(), "the day after");
  }

  @Test
  void aNewCardMakesTheOldOneUselessAndAnInventedOneLetsNobodyIn() {
    String old = card(0, today());
    String fresh = card(0, today());
    Browser tablet = new Browser(rig.tabletAddress());
    assertEquals(404, tablet.get("/c/" + old).statusCode());
    assertEquals(200, tablet.get("/c/" + fresh).statusCode());
    assertEquals(404, tablet.get("/c/" + "A".repeat(16)).statusCode());
  }

  @OfTheFile("what it holds")
  @Test
  void theSheetIsMadeOnlyForAnAddressThatStaysAndShowsOneCodeForEachChild() throws Exception {
    HttpResponse<String> refused = teacher.post("/setup/cards", Map.of("until", today().plusDays(30).toString()));
    assertEquals(422, refused.statusCode());
    assertTrue(refused.body().contains("Say first that the address stays as it is"));
    assertEquals(422, teacher.post("/setup/cards", Map.of("fixed", "yes", "until", "soon")).statusCode());
    assertEquals(List.of(), rig.services.cards.cards(rig.classroom.id()));
    HttpResponse<String> sheet =
        teacher.post("/setup/cards", Map.of("fixed", "yes", "until", today().plusDays(30).toString()));
    assertEquals(200, sheet.statusCode());
    assertEquals(3, sheet.body().split("class=\"qr\"", -1).length - 1);
    assertEquals(3, rig.services.cards.cards(rig.classroom.id()).size());
    String file = new String(Files.readAllBytes(rig.folder.resolve("fewermore.mv.db")), StandardCharsets.ISO_8859_1);
    assertFalse(file.contains("/C/"), "no card lies on the disk as it is printed");
  }

  @Test
  void cardsOfAnotherAddressAreSaidToBeStale() {
    rig.services.cards.make(Map.of(rig.children.get(0).id(), CardDoor.hash(rig.services.tokens.card())),
        "http://192.168.9.9:8420", today().plusDays(9), rig.now());
    assertTrue(teacher.get("/setup/cards").body().contains("1 card carries another address"));
  }

  /** 46 characters fit version 3 at level M, 29 modules, in the alphanumeric mode (ISO/IEC 18004, from memory). */
  @Test
  void inCapitalsTheCodeIsSmall() {
    String address = "HTTP://192.168.100.123:8420/C/" + "ABCDEFGHIJKLMNOP";
    assertEquals(46, address.length());
    assertEquals(29 + 8, QrPicture.of(address).size());
    assertTrue(QrPicture.of(address.toLowerCase()).size() > 29 + 8, "small letters need a larger one");
  }

  @Test
  void noTokenStandsInALog() {
    List<String> lines = new ArrayList<>();
    Handler listener = new Handler() {
      @Override
      public void publish(LogRecord record) {
        lines.add(record.getLoggerName() + ": " + record.getMessage() + " "
            + Arrays.toString(record.getParameters()) + " " + record.getThrown());
      }

      @Override
      public void flush() {}

      @Override
      public void close() {}
    };
    Logger root = Logger.getLogger("");
    root.addHandler(listener);
    String letters = card(0, today());
    String door = rig.door();
    try {
      Browser tablet = new Browser(rig.tabletAddress());
      tablet.get("/c/" + letters);
      tablet.post("/c/" + letters, Map.of());
      tablet.get("/in/" + door);
      tablet.get("/c/" + letters + "/nowhere");
      tablet.post("/c/" + letters, Map.of("csrf", "no"));
      System.getLogger("fewermore.test").log(System.Logger.Level.WARNING, "heard");
    } finally {
      root.removeHandler(listener);
    }
    assertTrue(lines.stream().anyMatch(line -> line.contains("heard")), "the log is heard at all");
    List<String> own = lines.stream().filter(line -> line.toUpperCase().contains(letters)
        || line.contains(door)).filter(line -> !line.startsWith("jdk.")).toList();
    assertEquals(List.of(), own);
  }

  @Test
  void whereTheClassAsksForTwoPicturesTheRightTwoAreNeededInAnyOrder() {
    assertEquals(303, teacher.post("/setup/secrets", Map.of("do", "on")).statusCode());
    List<String> two = rig.services.cards.secrets(rig.classroom.id()).get(rig.children.get(0).id());
    assertEquals(2, two.stream().distinct().count());
    List<String> others = SecretPage.CHOICES.stream().filter(each -> !two.contains(each)).limit(2).toList();
    Browser tablet = new Browser(rig.tabletAddress());
    tablet.get("/in/" + rig.door());
    String path = "/come-in/" + rig.children.get(0).id();
    tablet.get(path);
    HttpResponse<String> asked = tablet.post(path, Map.of());
    assertEquals(200, asked.statusCode());
    assertTrue(asked.body().contains("Tap your two pictures."));
    assertEquals(9, asked.body().split("name=\"secret\"", -1).length - 1);
    assertTrue(tablet.post(path, "secret", others).body().contains("Those are not your two."));
    assertTrue(tablet.post(path, "secret", List.of(two.get(0))).body().contains("Those are not your two."));
    assertTrue(tablet.post(path, "secret", SecretPage.CHOICES).body().contains("Those are not your two."), "all nine");
    assertEquals(303, tablet.get("/mine").statusCode(), "nobody is in");
    assertEquals(303, tablet.post(path, "secret", List.of(two.get(1), two.get(0))).statusCode());
    assertEquals(200, tablet.get("/mine").statusCode());
  }

  @Test
  void afterFiveTriesAtThePicturesATabletWaitsAMinute() {
    teacher.post("/setup/secrets", Map.of("do", "on"));
    List<String> two = rig.services.cards.secrets(rig.classroom.id()).get(rig.children.get(0).id());
    List<String> others = SecretPage.CHOICES.stream().filter(each -> !two.contains(each)).limit(2).toList();
    Browser tablet = new Browser(rig.tabletAddress());
    tablet.get("/in/" + rig.door());
    String path = "/come-in/" + rig.children.get(0).id();
    tablet.get(path);
    for (int tries = 0; tries < TabletHandlers.DOOR_TRIES; tries++) {
      assertEquals(200, tablet.post(path, "secret", others).statusCode());
    }
    assertEquals(429, tablet.post(path, "secret", two).statusCode());
    clock.now = clock.now.plusSeconds(61);
    assertEquals(303, tablet.post(path, "secret", two).statusCode());
  }

  @Test
  void theTeacherSeesAndSetsThePicturesAndSwitchesThemOff() {
    teacher.post("/setup/secrets", Map.of("do", "on"));
    String child = Long.toString(rig.children.get(2).id());
    Browser form = teacher;
    form.get("/setup/cards");
    assertEquals(303, form.send(form.request("/setup/secrets").header("Content-Type",
        "application/x-www-form-urlencoded").POST(java.net.http.HttpRequest.BodyPublishers.ofString("csrf="
            + rig.services.tokens.csrfOf(form.cookies.get("desk")) + "&do=one&child=" + child
            + "&secret=moon&secret=drum"))).statusCode());
    assertEquals(List.of("moon", "drum"),
        rig.services.cards.secrets(rig.classroom.id()).get(rig.children.get(2).id()));
    assertEquals(422, form.post("/setup/secrets", Map.of("do", "one", "child", child, "secret", "moon")).statusCode());
    List<String> before = rig.services.cards.secrets(rig.classroom.id()).get(rig.children.get(0).id());
    assertNotEquals(null, before);
    assertEquals(303, form.post("/setup/secrets", Map.of("do", "off")).statusCode());
    assertFalse(rig.services.cards.asksSecret(rig.classroom.id()));
    assertEquals(before, rig.services.cards.secrets(rig.classroom.id()).get(rig.children.get(0).id()), "kept for later");
  }

  @Test
  void aCardAsksForTheTwoPicturesToo() {
    teacher.post("/setup/secrets", Map.of("do", "on"));
    String letters = card(0, today());
    Browser tablet = new Browser(rig.tabletAddress());
    tablet.get("/c/" + letters);
    assertTrue(tablet.post("/c/" + letters, Map.of()).body().contains("Tap your two pictures."));
    assertEquals(303, tablet.post("/c/" + letters, "secret",
        rig.services.cards.secrets(rig.classroom.id()).get(rig.children.get(0).id())).statusCode());
  }
}
