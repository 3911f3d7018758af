package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.Door;
import fewermore.classroom.HandIn;
import fewermore.classroom.Picture;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.SentItem;
import fewermore.classroom.Sitting;
import fewermore.json.Json;
import fewermore.marking.Bars;
import fewermore.marking.Part;
import fewermore.marking.Prompts;
import fewermore.marking.Reading;
import fewermore.marking.Signs;
import fewermore.marking.Work;
import fewermore.problem.Problem;
import fewermore.store.ProblemStore.NewProblem;
import fewermore.store.SittingStore;
import fewermore.store.SittingStore.AssignedWork;
import fewermore.store.WorkStore;
import fewermore.web.child.ChildTexts;
import fewermore.web.child.ComeInPage;
import fewermore.web.child.DoorPage;
import fewermore.web.child.Draft;
import fewermore.web.child.IsThisYouPage;
import fewermore.web.child.Me;
import fewermore.web.child.SecretPage;
import fewermore.web.child.ShownPicture;
import fewermore.web.child.ShownProblem;
import fewermore.web.child.SittingPage;
import fewermore.web.child.StrategyForm;
import fewermore.web.child.Tile;
import fewermore.web.child.Told;
import fewermore.web.child.WorkPage;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a tablet can do: come in, see one child's problems, hand in. */
final class TabletHandlers implements Doors.Guard {
  static final String TABLET = "tablet";
  static final String DAY = "day";
  static final String SEAT = "seat";
  static final String LANGUAGE = "language";
  private static final int TABLET_DAYS = 180;
  /** Wrong pictures a tablet may tap in a minute. */
  static final int DOOR_TRIES = 5;
  /** Pictures to choose the door's four from. */
  private static final int CHOICES = 12;
  /** Numbers of a story a form may send as known. */
  private static final int MOST_KNOWN = 20;

  /** Problems a child may take beyond those of the day. */
  static final int MOST_MORE = 4;

  final Services services;
  /** Two taps at once make one problem. */
  private final Object oneAtATime = new Object();
  private final Map<String, Deque<Instant>> doorTries = new ConcurrentHashMap<>();
  final HandHandlers hands;
  final VoiceHandlers voices;

  TabletHandlers(Services services) {
    this.services = services;
    this.hands = new HandHandlers(services, this);
    this.voices = new VoiceHandlers(services, this);
  }

  // ---- who asks ----

  @Override
  public void admit(Context request, May may) {
    services.visitors.came(request.ip(), request.userAgent(), request.path().equals(HelloHandlers.PATH),
        services.now());
    switch (may) {
      case ANYONE, KEY -> meet(request, may);
      case DOOR -> {
        meet(request, may);
        if (openDoor(request).isEmpty()) {
          throw new Refusal(403, text(request, "door.closed"));
        }
      }
      case CHILD -> {
        if (sitting(request).filter(Sitting::open).isEmpty()) {
          Doors.redirect(request, "/come-in");
        }
      }
      case TEACHER, SUBSTITUTE -> throw Refusal.notFound();
    }
  }

  @Override
  public String formToken(Context request) {
    String tablet = tablet(request);
    return tablet == null ? null : services.tokens.csrfOf(tablet);
  }

  /** The laptop's address can change under an open page; its port does not. */
  @Override
  public String maySendTo() {
    return " http://*:" + services.reach.port();
  }

  @Override
  public void answered(int status) {
    services.turnedAway.count(status);
  }

  @Override
  public void show(Context request, int status, String sentence) {
    request.status(status);
    if (request.path().equals("/work") || request.path().equals("/pulse")) {
      request.json(Map.of("problem", sentence));
      return;
    }
    // Why nothing is kept is for the teacher to read.
    Doors.render(services, request, "child/stopped", status == 503 ? text(request, "stopped.wait") : sentence, "",
        language(request));
  }

  /**
   * A tablet that is here for the first time gets its cookie. It is written down, with a name, where it is about to
   * come in: looking at a desk card or trying things out changes nothing here.
   */
  private void meet(Context request, May may) {
    if (may == May.KEY || request.path().equals("/pulse") || tablet(request) != null) {
      return;
    }
    String cookie = services.tokens.id();
    if (!CardDoor.isCard(request.path()) && !request.path().equals(HelloHandlers.PATH)) {
      know(cookie);
    }
    request.attribute(TABLET, cookie);
    setCookie(request, TABLET, cookie, (int) Duration.ofDays(TABLET_DAYS).toSeconds());
  }

  private void know(String cookie) {
    services.sittings.meetTablet(Tokens.hash(cookie), Animals.name(services.sittings.tablets()), services.now());
  }

  private static String tablet(Context request) {
    String made = request.attribute(TABLET);
    return made != null ? made : request.cookie(TABLET);
  }

  private Optional<Door> openDoor(Context request) {
    String token = request.cookie(DAY);
    return token == null ? Optional.empty() : openDoor(token);
  }

  /** A door is open while it is its class's newest and it is still that day there. */
  private Optional<Door> openDoor(String token) {
    return services.sittings.doorOf(token)
        .filter(door -> services.classes.find(door.classroom()).map(services::today).filter(door.day()::equals)
            .isPresent())
        .filter(door -> services.setups.of(door.classroom()).closedOn() == null);
  }

  private Optional<Sitting> sitting(Context request) {
    String cookie = request.cookie(SEAT);
    Optional<Sitting> sitting =
        cookie == null ? Optional.empty() : services.sittings.byCookie(Tokens.hash(cookie));
    return sitting.isPresent() && sitting.get().open() && overAtNight(sitting.get())
        ? services.sittings.find(sitting.get().id()) : sitting;
  }

  /** A sitting of a day that is over ends, whenever it is asked for. */
  private boolean overAtNight(Sitting sitting) {
    return services.classes.find(sitting.child().classroom())
        .filter(classroom -> sitting.startedAt().isBefore(services.midnight(classroom)))
        .map(classroom -> services.sittings.endBefore(classroom.id(), services.midnight(classroom)) > 0)
        .orElse(false);
  }

  Sitting openSitting(Context request) {
    return sitting(request).filter(Sitting::open).orElseThrow(Refusal::forbidden);
  }

  private static void setCookie(Context request, String name, String value, int seconds) {
    request.cookie(new Cookie(name, value, "/", seconds, false, true, null, SameSite.LAX));
  }

  // ---- come in ----

  void start(Context request) {
    request.redirect(sitting(request).filter(Sitting::open).isPresent() ? "/mine" : "/come-in", HttpStatus.SEE_OTHER);
  }

  /** The language of the pages before anybody is in: what was tapped there, else English. */
  String language(Context request) {
    String chosen = request.queryParam(LANGUAGE);
    if (chosen != null && ChildTexts.LANGUAGES.contains(chosen)) {
      setCookie(request, LANGUAGE, chosen, -1);
      return chosen;
    }
    String before = request.cookie(LANGUAGE);
    return before != null && ChildTexts.LANGUAGES.contains(before) ? before : "en";
  }

  void enter(Context request) {
    Door door = openDoor(request.pathParam("door").toUpperCase(Locale.ROOT))
        .orElseThrow(() -> new Refusal(404, text(request, "door.closed")));
    setCookie(request, DAY, door.token(), -1);
    request.redirect("/come-in", HttpStatus.SEE_OTHER);
  }

  void comeIn(Context request) {
    Optional<Door> door = openDoor(request);
    if (door.isEmpty()) {
      showDoor(request, List.of(), DoorPage.Problem.NONE);
      return;
    }
    Set<Long> in = services.sittings.open(door.get().classroom()).stream()
        .map(sitting -> sitting.child().id()).collect(Collectors.toSet());
    List<Tile> tiles = services.classes.children(door.get().classroom()).stream()
        .map(child -> new Tile(Long.toString(child.id()), child.name(), picture(child), in.contains(child.id())))
        .toList();
    String language = language(request);
    render(request, "child/come-in", new ComeInPage(language, tiles), language);
  }

  void tapDoor(Context request) {
    List<String> taps = new ArrayList<>(Stream.of(form(request, "taps").split(","))
        .filter(tap -> !tap.isBlank()).limit(DoorPage.LENGTH).toList());
    String tap = form(request, "tap");
    if (!tap.isBlank() && taps.size() < DoorPage.LENGTH) {
      taps.add(tap);
    }
    if (taps.size() < DoorPage.LENGTH) {
      showDoor(request, taps, DoorPage.Problem.NONE);
      return;
    }
    if (triedTooOften(tablet(request))) {
      request.status(429);
      showDoor(request, List.of(), DoorPage.Problem.WAIT_A_MINUTE);
      return;
    }
    Optional<Door> door = doorsOpen().stream().filter(each -> each.pictures().equals(taps)).findFirst();
    if (door.isEmpty()) {
      showDoor(request, List.of(), DoorPage.Problem.OTHER_PICTURES);
      return;
    }
    setCookie(request, DAY, door.get().token(), -1);
    request.redirect("/come-in", HttpStatus.SEE_OTHER);
  }

  private boolean triedTooOften(String tablet) {
    Instant now = services.now();
    Deque<Instant> tries = doorTries.computeIfAbsent(tablet, key -> new ArrayDeque<>());
    synchronized (tries) {
      while (!tries.isEmpty() && tries.peekFirst().isBefore(now.minusSeconds(60))) {
        tries.removeFirst();
      }
      boolean often = tries.size() >= DOOR_TRIES;
      tries.addLast(now);
      return often;
    }
  }

  /**
   * Doors of the days it can be anywhere on Earth now that are open where their class is. Each class's door of today
   * is made if nobody has asked for it yet: a tablet may come before the teacher opens the Board.
   */
  private List<Door> doorsOpen() {
    services.openClasses().forEach(services::door);
    LocalDate day = services.now().atZone(java.time.ZoneOffset.UTC).toLocalDate();
    return Stream.of(day.minusDays(1), day, day.plusDays(1))
        .flatMap(each -> services.sittings.doorsOpen(each).stream())
        .filter(door -> openDoor(door.token()).isPresent())
        .toList();
  }

  /** Twelve pictures: those of all open doors, filled up; in the order of the list, so that it says nothing. */
  private void showDoor(Context request, List<String> tapped, DoorPage.Problem problem) {
    List<String> wanted = doorsOpen().stream().flatMap(door -> door.pictures().stream()).distinct().toList();
    List<Picture> choices = new ArrayList<>(Picture.ALL.stream().filter(each -> wanted.contains(each.id())).toList());
    Picture.ALL.stream().filter(each -> !wanted.contains(each.id()))
        .limit(Math.max(0, CHOICES - choices.size())).forEach(choices::add);
    choices.sort(Comparator.comparing(Picture::id));
    List<ShownPicture> shownTaps = tapped.stream()
        .flatMap(id -> Picture.ALL.stream().filter(each -> each.id().equals(id))).map(ShownPicture::of).toList();
    String language = language(request);
    render(request, "child/door",
        new DoorPage(language, choices.stream().map(ShownPicture::of).toList(), shownTaps, problem), language);
  }

  void isThisYou(Context request) {
    Child child = childOfDoor(request);
    askWhether(request, child, "/come-in/" + child.id());
  }

  /** @param post where "Yes, it's me" is posted */
  void askWhether(Context request, Child child, String post) {
    render(request, "child/is-this-you",
        new IsThisYouPage(child.language(), me(child), post), child.language());
  }

  void itIsMe(Context request) {
    Child child = childOfDoor(request);
    takeASeat(request, child, "/come-in/" + child.id());
  }

  /** The child comes in, after tapping her two pictures where the class asks for them. */
  void takeASeat(Context request, Child child, String post) {
    SecretPage.Problem missing = secretMissing(request, child);
    if (missing != null) {
      request.status(missing == SecretPage.Problem.WAIT_A_MINUTE ? 429 : 200);
      render(request, "child/secret", SecretPage.of(child.language(), me(child), post, missing), child.language());
      return;
    }
    know(tablet(request));
    String cookie = services.tokens.id();
    services.sittings.start(services.tokens.id(), child.id(), Tokens.hash(tablet(request)), Tokens.hash(cookie),
        services.now());
    setCookie(request, SEAT, cookie, -1);
    services.live.changed(child.classroom());
    request.redirect("/mine", HttpStatus.SEE_OTHER);
  }

  /** What stands between the child and her seat, or null: her class asks for no pictures, or these are hers. */
  private SecretPage.Problem secretMissing(Context request, Child child) {
    List<String> hers = services.cards.asksSecret(child.classroom())
        ? services.cards.secrets(child.classroom()).get(child.id()) : null;
    if (hers == null) {
      return null;
    }
    List<String> tapped = request.formParams("secret");
    if (tapped.isEmpty()) {
      return SecretPage.Problem.NONE;
    }
    if (triedTooOften("secret " + tablet(request))) {
      return SecretPage.Problem.WAIT_A_MINUTE;
    }
    return Set.copyOf(tapped).equals(Set.copyOf(hers)) ? null : SecretPage.Problem.OTHER_PICTURES;
  }

  private Child childOfDoor(Context request) {
    Door door = openDoor(request).orElseThrow(Refusal::forbidden);
    return number(request.pathParam("child"))
        .flatMap(child -> services.classes.child(door.classroom(), child))
        .orElseThrow(Refusal::notFound);
  }

  // ---- one child's problems ----

  void mine(Context request) {
    Sitting sitting = openSitting(request);
    List<AssignedWork> works = works(sitting);
    Instant now = services.now();
    services.presence.heard(sitting.id(), now);
    List<ShownProblem> problems = new ArrayList<>();
    for (AssignedWork work : works) {
      problems.add(shown(sitting.child(), work, problems.size() + 1, now));
    }
    String language = sitting.child().language();
    Doors.render(services, request, "child/mine", new SittingPage(language, me(sitting.child()), sitting.id(),
        services.tokens.keyOf(sitting.id()), problems), formToken(request), language,
        Map.of("from", from(sitting, works), "more", more(sitting, works), "paused", paused(sitting)));
  }

  private boolean paused(Sitting sitting) {
    return services.pauses.paused(sitting.child().classroom());
  }

  /** The day a problem waits from, in the child's language, by work: those of days she was away. */
  private Map<String, String> from(Sitting sitting, List<AssignedWork> works) {
    LocalDate today = today(sitting);
    Map<String, String> from = new HashMap<>();
    works.stream().filter(work -> !work.set().day().equals(today)).forEach(work -> from.put(work.id(),
        work.set().day().getDayOfWeek().getDisplayName(TextStyle.FULL,
            Locale.forLanguageTag(sitting.child().language()))));
    return from;
  }

  private LocalDate today(Sitting sitting) {
    return services.classes.find(sitting.child().classroom()).map(services::today).orElseThrow(Refusal::notFound);
  }

  /** {@code no} when there is no room for more, {@code later} until all is handed in, else {@code now}. */
  private String more(Sitting sitting, List<AssignedWork> works) {
    LocalDate today = today(sitting);
    int taken = services.problems.more(sitting.child().classroom(), sitting.child().id(), today).size();
    if (works.isEmpty() || taken >= MOST_MORE || works.size() >= SittingStore.MOST_PROBLEMS) {
      return "no";
    }
    return works.stream().allMatch(work -> services.works.state(sitting.child().id(), work.problem().id()).handedIn() > 0)
        ? "now" : "later";
  }

  /** One more problem for a child who has handed in all of hers; never required. */
  void oneMore(Context request) {
    Sitting sitting = openSitting(request);
    Child child = sitting.child();
    synchronized (oneAtATime) {
      List<AssignedWork> works = works(sitting);
      if (more(sitting, works).equals("now")) {
        LocalDate today = today(sitting);
        List<ProblemSet> sets = works.stream().map(AssignedWork::set).distinct().toList();
        Set<String> names = services.classes.children(child.classroom()).stream().map(Child::name)
            .collect(Collectors.toSet());
        Problem problem = services.more.next(child, services.works.piecesOf(child), sets,
            services.reasoning.word(child.classroom()), names,
            services.tokens.below(Integer.MAX_VALUE));
        ProblemSet like = sets.get(0);
        services.problems.addForOne(child.classroom(), child.id(), today, like.tries(), like.tellLater(), like.asks(),
            NewProblem.of(problem), services.now());
      }
    }
    request.redirect("/mine", HttpStatus.SEE_OTHER);
  }

  void work(Context request) {
    Sitting sitting = openSitting(request);
    List<AssignedWork> works = works(sitting);
    int at = indexOf(works, request.pathParam("work"));
    String language = sitting.child().language();
    Doors.render(services, request, "child/work", new WorkPage(language, me(sitting.child()),
        shown(sitting.child(), works.get(at), at + 1, services.now()), works.size(),
        at + 1 < works.size() ? works.get(at + 1).id() : null), formToken(request), language,
        Map.of("paused", paused(sitting)));
  }

  /** The form of a tablet without script: a hand-in like any other, under a page id of its own. */
  void handIn(Context request) {
    Sitting sitting = openSitting(request);
    List<AssignedWork> works = works(sitting);
    AssignedWork work = works.get(indexOf(works, request.pathParam("work")));
    Set<Part> asks = work.set().asks();
    Bars bars = asks.contains(Part.BARS)
        ? new Bars(form(request, "longer"), onBar(request, "longerBar"), onBar(request, "shorterBar"),
            onBar(request, "gap"))
        : null;
    Work parts = new Work(
        asks.contains(Part.EQUATION) ? form(request, "equation") : null,
        asks.contains(Part.ANSWER) ? form(request, "answer") : null,
        asks.contains(Part.LABEL) ? form(request, "label") : null,
        bars,
        asks.contains(Part.ESTIMATE)
            ? estimate(request, services.works.state(sitting.child().id(), work.problem().id())) : null,
        asks.contains(Part.READING) ? new Reading(form(request, "question"),
            request.formParams("known").stream().limit(MOST_KNOWN).toList()) : null,
        asks.contains(Part.STRATEGY) ? StrategyForm.read(field -> form(request, field)) : null);
    Instant now = services.now();
    services.works.keep(sitting.id(), List.of(new SentItem(
        work.id(), services.tokens.id().substring(0, 16), 1, SentItem.Kind.HANDED_IN, parts, now, false)), now);
    services.live.changed(sitting.child().classroom());
    request.redirect("/mine/" + work.id(), HttpStatus.SEE_OTHER);
  }

  /** A number or a side; where both were sent, the one that is new: a side once chosen stays chosen in a form. */
  private static String estimate(Context request, WorkStore.State before) {
    String number = form(request, "estimate");
    String side = form(request, "estimateSide");
    String kept = before.newest() == null ? null : before.newest().estimate();
    return side.isEmpty() || !number.isBlank() && !number.equals(kept) ? number : side;
  }

  void leave(Context request) {
    Sitting sitting = openSitting(request);
    services.sittings.end(sitting.id(), "done", services.now());
    request.removeCookie(SEAT, "/");
    services.live.changed(sitting.child().classroom());
    request.redirect("/come-in", HttpStatus.SEE_OTHER);
  }

  List<AssignedWork> works(Sitting sitting) {
    Classroom classroom = services.classes.find(sitting.child().classroom()).orElseThrow(Refusal::notFound);
    return services.sittings.works(sitting, services.today(classroom), services.tokens::idInOrder, services.now());
  }

  private static int indexOf(List<AssignedWork> works, String id) {
    for (int at = 0; at < works.size(); at++) {
      if (works.get(at).id().equals(id)) {
        return at;
      }
    }
    throw Refusal.notFound();
  }

  private ShownProblem shown(Child child, AssignedWork work, int number, Instant now) {
    WorkStore.State state = services.works.state(child.id(), work.problem().id());
    HandIn last = state.lastHandIn();
    Told told = last == null ? null : new Told(
        Signs.of(last.marks(), work.set().tellLater()),
        Prompts.of(work.problem().story(), last.parts(), last.marks(), work.set().tellLater(),
            Locale.forLanguageTag(child.language())));
    Draft draft = state.newest() == null ? null
        : new Draft(state.newest(), Math.max(0, Duration.between(state.newestAt(), now).toMillis()),
            state.newestHandedIn());
    return TabletPages.problem(work, number, child.language(),
        Math.max(0, work.set().tries() - state.handedIn()), draft, told,
        services.hands.up(child.id(), work.problem().id()),
        services.voices.recorded(work.problem().id(), work.problem().languageFor(child.language())));
  }

  // ---- the protocol ----

  void send(Context request) {
    request.header("Access-Control-Allow-Origin", "*");
    byte[] body = request.bodyAsBytes();
    if (body.length > WorkProtocol.MOST_BYTES) {
      request.status(413).json(Map.of("problem", "a request of at most " + WorkProtocol.MOST_BYTES
          + " bytes was expected; send fewer items at once"));
      return;
    }
    WorkProtocol.Reply reply =
        services.protocol.receive(new String(body, java.nio.charset.StandardCharsets.UTF_8), services.now());
    request.status(reply.status()).contentType("application/json").result(Json.write(reply.body()));
  }

  /** An open page of an address this laptop had before may still send its work here; no cookie goes with it. */
  void mayAnotherAddressSend(Context request) {
    request.header("Access-Control-Allow-Origin", "*");
    request.header("Access-Control-Allow-Methods", "POST");
    request.header("Access-Control-Allow-Headers", "Content-Type");
    request.status(204);
  }

  void pulse(Context request) {
    Optional<Sitting> sitting = sitting(request);
    ObjectNode reply = services.protocol.pulse(sitting, request.queryParam("untold") != null, services.now());
    sitting.ifPresent(each -> services.heard(each, reply));
    request.contentType("application/json").result(Json.write(reply));
  }

  // ---- small things ----

  void render(Context request, String name, Object page, String language) {
    Doors.render(services, request, name, page, formToken(request), language);
  }

  String text(Context request, String key) {
    return ChildTexts.in(language(request)).of(key);
  }

  private static Me me(Child child) {
    return new Me(child.name(), picture(child));
  }

  private static ShownPicture picture(Child child) {
    return new ShownPicture(child.picture(), child.ground());
  }

  /** A form field; the empty text when it was not sent. */
  private static String form(Context request, String field) {
    String value = request.formParam(field);
    return value == null ? "" : value.length() > 2000 ? value.substring(0, 2000) : value;
  }

  /** What stands on a bar: the unknown sign is kept as x, however it was typed. */
  static String onBar(Context request, String field) {
    String value = form(request, field).strip();
    return Set.of("?", "□", "_", "X").contains(value) ? "x" : value;
  }

  static Optional<Long> number(String text) {
    try {
      return Optional.of(Long.parseLong(text));
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }
}
