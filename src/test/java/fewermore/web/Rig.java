package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.Picture;
import fewermore.classroom.ProblemSet;
import fewermore.marking.Part;
import fewermore.store.ClassStore.NewChild;
import fewermore.store.Database;
import fewermore.store.Stores;
import fewermore.store.ProblemStore.NewProblem;
import fewermore.store.disk.Disk;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The real app on free loopback ports and a real database file, with a class of three and a set of two. */
public final class Rig implements AutoCloseable {
  /** What the tests' sets ask, unless they say otherwise. */
  public static final Set<Part> FOUR_PARTS = Set.of(Part.BARS, Part.EQUATION, Part.ANSWER, Part.LABEL);
  public static final String PASSPHRASE = "a quiet tide pool";

  public final Path folder;
  public final App app;
  public final Services services;
  public final Classroom classroom;
  public final List<Child> children;
  public final ProblemSet set;
  private final boolean ownFolder;

  private Rig(Path folder, boolean ownFolder, Clock clock, String publicAddress, int port, int teacherPort) {
    this(folder, ownFolder, clock, publicAddress, port, teacherPort, Stores.open(folder));
  }

  private Rig(Path folder, boolean ownFolder, Clock clock, String publicAddress, int port, int teacherPort,
      Database database) {
    this.folder = folder;
    this.ownFolder = ownFolder;
    Settings settings = new Settings(folder, port, teacherPort, "127.0.0.1", publicAddress);
    this.app = App.start(settings, database, Network.loopbackOnly(), clock);
    this.services = app.services();
    long teacher = services.teachers.first().map(each -> each.id()).orElseGet(() -> services.teachers
        .add("Teacher", Passphrases.hash(PASSPHRASE), true, services.now()).orElseThrow().id());
    List<Classroom> classes = services.classes.of(teacher);
    this.classroom = classes.isEmpty()
        ? services.classes.add(teacher, "Room 12", ZoneId.of("America/Chicago"), false,
            children("Noor", "Elsie", "Kofi"), services.now())
        : classes.get(0);
    this.children = services.classes.children(classroom.id());
    this.set = services.problems.given(classroom.id(), services.today(classroom)).stream().findFirst()
        .orElseGet(() -> give(List.of(Stories.SHELLS, Stories.BEADS)));
  }

  public static Rig start() {
    return start(Clock.systemUTC());
  }

  public static Rig start(Clock clock) {
    return new Rig(folder(), true, clock, null, 0, 0);
  }

  /** On a disk of one's own, for example one that fails. */
  public static Rig startOn(Disk disk) {
    Path folder = folder();
    return startOn(folder, Database.open(folder, disk, (data, from) -> { }));
  }

  /** On a database of one's own, whose folder goes at the end. */
  public static Rig startOn(Path folder, Database database) {
    return new Rig(folder, true, Clock.systemUTC(), null, 0, 0, database);
  }

  /** Answers to the name {@code tablet.test} too: a browser sees an insecure origin, as a tablet does. */
  public static Rig startForTablets() {
    return new Rig(folder(), true, Clock.systemUTC(), "http://tablet.test", 0, 0);
  }

  /** On data that are there already, on the very port as before. */
  public static Rig startAgain(Path folder, int port, int teacherPort, String publicAddress) {
    return new Rig(folder, false, Clock.systemUTC(), publicAddress, port, teacherPort);
  }

  private static Path folder() {
    try {
      return Files.createTempDirectory("fewermore-test");
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  public static List<NewChild> children(String... names) {
    List<NewChild> children = new ArrayList<>();
    for (String name : names) {
      Picture picture = Picture.ALL.get(children.size());
      children.add(new NewChild(name, picture.id(), picture.ground(), "en"));
    }
    return children;
  }

  public ProblemSet give(List<NewProblem> problems) {
    return services.problems.addSet(classroom.id(), services.today(classroom), true, 3, false,
        FOUR_PARTS, problems, services.now());
  }

  public Instant now() {
    return services.now();
  }

  public String tabletAddress() {
    return "http://127.0.0.1:" + app.port();
  }

  public String teacherAddress() {
    return "http://127.0.0.1:" + app.teacherPort();
  }

  /** All that was handed in and counts. */
  public List<fewermore.classroom.PieceOfWork> pieces() {
    return services.works.pieces(classroom.id());
  }

  public String door() {
    return services.door(classroom).token();
  }

  /** Stops the app and leaves the data. */
  public void stop() {
    app.close();
  }

  @Override
  public void close() {
    app.close();
    if (ownFolder) {
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path each : (Iterable<Path>) all.sorted(Comparator.reverseOrder())::iterator) {
          Files.deleteIfExists(each);
        }
      } catch (IOException e) {
        throw new java.io.UncheckedIOException(e);
      }
    }
  }
}
