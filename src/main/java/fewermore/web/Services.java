package fewermore.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import fewermore.classroom.KeptReasonings;
import fewermore.classroom.Classroom;
import fewermore.classroom.Door;
import fewermore.classroom.Picture;
import fewermore.store.CardStore;
import fewermore.classroom.Sitting;
import fewermore.store.ClassStore;
import fewermore.store.Database;
import fewermore.store.PlanStore;
import fewermore.store.MovingStore;
import fewermore.store.HandStore;
import fewermore.store.ProblemStore;
import fewermore.store.ReasoningStore;
import fewermore.store.RoomStore;
import fewermore.store.Erasing;
import fewermore.store.RecordStore;
import fewermore.store.SetupStore;
import fewermore.store.SittingStore;
import fewermore.store.SpanishStore;
import fewermore.store.TeacherStore;
import fewermore.store.VoiceStore;
import fewermore.store.WorkStore;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What the handlers of both doors work with. */
final class Services {
  private static final String SECRET = "secret";

  final Settings settings;
  final Clock clock;
  final Database database;
  final TeacherStore teachers;
  final ClassStore classes;
  final ProblemStore problems;
  final PlanStore plans;
  final SpanishStore spanish;
  final SittingStore sittings;
  final WorkStore works;
  final HandStore hands;
  final VoiceStore voices;
  final ReasoningStore reasoning;
  final KeptReasonings reasonings = new KeptReasonings();
  final SetupStore setups;
  final RecordStore records;
  final Erasing erasing;
  final MoreProblems more = MoreProblems.WHAT_TELLS_MOST;
  final Tokens tokens;
  final TeacherSessions sessions;
  final Assets assets;
  final Pages pages;
  final Live live;
  final Reach reach;
  final WorkProtocol protocol;
  final MovingStore moving;
  final CardStore cards;
  final Calls calls = new Calls();
  final TurnedAway turnedAway = new TurnedAway();
  final Visitors visitors;
  final InventedClasses invented;
  final BackupDesk backups;
  final RoomStore rooms;
  final Presence presence;
  final Pauses pauses;
  final RoomWatch room;
  final Stage stage;

  Services(Settings settings, Database database, Network network, Clock clock) {
    this.settings = settings;
    this.clock = clock;
    this.database = database;
    this.teachers = new TeacherStore(database);
    this.classes = new ClassStore(database);
    this.problems = new ProblemStore(database);
    this.plans = new PlanStore(database);
    this.spanish = new SpanishStore(database);
    this.sittings = new SittingStore(database);
    this.works = new WorkStore(database);
    this.hands = new HandStore(database);
    this.voices = new VoiceStore(database);
    this.reasoning = new ReasoningStore(database);
    this.setups = new SetupStore(database);
    this.records = new RecordStore(database);
    this.tokens = new Tokens(teachers.setting(SECRET).orElseGet(() -> {
      String made = Tokens.newSecret();
      teachers.set(SECRET, made);
      return made;
    }));
    this.sessions = new TeacherSessions(clock, tokens);
    this.assets = Assets.load();
    this.pages = new Pages(assets);
    this.live = new Live();
    this.reach = new Reach(settings, network, () -> teachers.setting(Reach.CHOSEN).orElse(null));
    this.invented = new InventedClasses(this);
    this.backups = new BackupDesk(this);
    this.erasing = new Erasing(database, backups::somethingWasErased);
    pages.saving(database::state);
    pages.inSchool(database.inSchool() ? database.where() : null);
    database.watch(state -> live.changedEverywhere());
    this.protocol = new WorkProtocol(sittings, works, hands, tokens, calls, live::changed);
    this.moving = new MovingStore(database);
    this.cards = new CardStore(database);
    this.visitors = new Visitors(reach::isThisLaptop);
    this.rooms = new RoomStore(database);
    this.presence = new Presence(clock);
    this.pauses = new Pauses(rooms);
    this.room = new RoomWatch(this);
    this.stage = new Stage(live);
    protocol.tellOf(this::heard);
  }

  /** A tablet asked or sent something: it is there, and it is told whether the class is paused. */
  void heard(Sitting sitting, ObjectNode reply) {
    presence.heard(sitting.id(), now());
    pauses.tell(sitting, reply);
  }

  /** Now, to the millisecond: what the store keeps is what was said. */
  Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MILLIS);
  }

  /** The teacher's classes: those of this year before closed ones, her own before invented ones, newest first. */
  List<Classroom> classesOf(long teacher) {
    List<Classroom> all = new ArrayList<>(classes.of(teacher));
    Set<Long> closed = setups.closed();
    all.sort(Comparator.comparing((Classroom each) -> closed.contains(each.id()))
        .thenComparing(Classroom::invented).thenComparing(Comparator.comparing(Classroom::id).reversed()));
    return all;
  }

  /** Every class of every teacher that tablets may come into. */
  List<Classroom> openClasses() {
    Set<Long> closed = setups.closed();
    return teachers.all().stream().flatMap(teacher -> classes.of(teacher.id()).stream())
        .filter(each -> !closed.contains(each.id())).toList();
  }

  /** Today's door of a class; made when it is asked for the first time in a day. */
  Door door(Classroom classroom) {
    LocalDate today = today(classroom);
    return sittings.door(classroom.id(), today, () -> newDoor(classroom), now());
  }

  /** A door of four different drawings, drawn by lot. */
  Door newDoor(Classroom classroom) {
    List<String> pictures = new ArrayList<>();
    while (pictures.size() < 4) {
      String picture = Picture.ALL.get(tokens.below(Picture.ALL.size())).id();
      if (!pictures.contains(picture)) {
        pictures.add(picture);
      }
    }
    return new Door(classroom.id(), today(classroom), tokens.door(), pictures);
  }

  Optional<String> doorAddress() {
    return teachers.first()
        .flatMap(teacher -> classesOf(teacher.id()).stream().findFirst())
        .flatMap(this::doorAddress);
  }

  Optional<String> doorAddress(Classroom classroom) {
    return reach.address().map(address -> address + "/in/" + door(classroom).token());
  }

  /** When today began where the class is. */
  Instant midnight(Classroom classroom) {
    return today(classroom).atStartOfDay(classroom.zone()).toInstant();
  }

  /** Ends the sittings of days that are over. */
  void endTheDays() {
    classes.all().forEach(classroom -> sittings.endBefore(classroom.id(), midnight(classroom)));
  }

  /** The day it is where the class is. */
  LocalDate today(Classroom classroom) {
    return now().atZone(classroom.zone()).toLocalDate();
  }
}
