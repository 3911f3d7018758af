package fewermore.web;

import fewermore.classroom.Classroom;
import fewermore.classroom.Door;
import fewermore.classroom.Picture;
import fewermore.store.ClassStore;
import fewermore.store.Database;
import fewermore.store.ProblemStore;
import fewermore.store.SittingStore;
import fewermore.store.TeacherStore;
import fewermore.store.WorkStore;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What the handlers of both doors work with. */
final class Services {
  private static final String SECRET = "secret";

  final Settings settings;
  final Clock clock;
  final Database database;
  final TeacherStore teachers;
  final ClassStore classes;
  final ProblemStore problems;
  final SittingStore sittings;
  final WorkStore works;
  final Tokens tokens;
  final TeacherSessions sessions;
  final Assets assets;
  final Pages pages;
  final Live live;
  final Reach reach;
  final WorkProtocol protocol;
  final InventedClasses invented;

  Services(Settings settings, Database database, Network network, Clock clock) {
    this.settings = settings;
    this.clock = clock;
    this.database = database;
    this.teachers = new TeacherStore(database);
    this.classes = new ClassStore(database);
    this.problems = new ProblemStore(database);
    this.sittings = new SittingStore(database);
    this.works = new WorkStore(database);
    this.tokens = new Tokens(teachers.setting(SECRET).orElseGet(() -> {
      String made = Tokens.newSecret();
      teachers.set(SECRET, made);
      return made;
    }));
    this.sessions = new TeacherSessions(clock, tokens);
    this.assets = Assets.load();
    this.pages = new Pages(assets);
    this.live = new Live();
    this.reach = new Reach(settings, network);
    this.invented = new InventedClasses(this);
    this.protocol = new WorkProtocol(sittings, works, tokens, live::changed);
  }

  /** Now, to the millisecond: what the store keeps is what was said. */
  Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MILLIS);
  }

  /** The teacher's classes, her own before invented ones, newest first. */
  List<Classroom> classesOf(long teacher) {
    List<Classroom> all = new ArrayList<>(classes.of(teacher));
    all.sort(Comparator.comparing(Classroom::invented).thenComparing(Comparator.comparing(Classroom::id).reversed()));
    return all;
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

  /** The day it is where the class is. */
  LocalDate today(Classroom classroom) {
    return now().atZone(classroom.zone()).toLocalDate();
  }
}
