package fewermore.web;

import fewermore.store.Database;
import fewermore.store.WorkStore;
import io.javalin.Javalin;
import io.javalin.util.JavalinBindException;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The running application: one database, two doors. */
public final class App implements AutoCloseable {
  /** A port could not be opened; the message is a plain sentence that says what to do. */
  public static final class CannotListen extends RuntimeException {
    private static final long serialVersionUID = 1L;

    CannotListen(String message) {
      super(message);
    }
  }

  private static final Logger LOG = System.getLogger(App.class.getName());
  /** The setting that says what marking again changed. */
  static final String MARKED_AGAIN = "marked again";

  private static final int TABLET_THREADS = 80;
  private static final int TEACHER_THREADS = 24;

  private final Services services;
  private final Javalin tablets;
  private final Javalin teacher;
  private final Watch watch;

  private App(Services services, Javalin tablets, Javalin teacher, Watch watch) {
    this.watch = watch;
    this.services = services;
    this.tablets = tablets;
    this.teacher = teacher;
  }

  /**
   * Starts on an open database and takes it over: {@link #close} closes it.
   *
   * @throws CannotListen when a port is taken; the database stays open
   */
  public static App start(Settings settings, Database database, Network network, Clock clock) {
    return start(new Services(settings, database, network, clock));
  }

  /**
   * {@link #start} on an empty database with a teacher and her invented class, made before anybody can come in.
   *
   * @param passphrase the teacher's, in plain text: everybody may know it
   * @param children {@link fewermore.classroom.InventedClass#FEWEST} to
   *     {@link fewermore.classroom.InventedClass#MOST}
   */
  public static App startDemo(
      Settings settings, Database database, Network network, Clock clock, String passphrase, int children) {
    Services services = new Services(settings, database, network, clock);
    long teacher = services.teachers.add("Teacher", Passphrases.hash(passphrase), true, services.now())
        .orElseThrow(() -> new IllegalStateException("a demo starts on an empty database")).id();
    services.invented.make(teacher, children, ZoneId.systemDefault());
    return start(services);
  }

  private static App start(Services services) {
    Settings settings = services.settings;
    markAgain(services);
    TabletHandlers tabletHandlers = new TabletHandlers(services);
    TeacherHandlers teacherHandlers = new TeacherHandlers(services);
    Javalin tablets = Doors.open(services, TabletRoutes.of(tabletHandlers), tabletHandlers,
        settings.host(), settings.port(), TABLET_THREADS);
    Javalin teacher = Doors.open(services, TeacherRoutes.of(teacherHandlers), teacherHandlers,
        settings.teacherHost(), settings.teacherPort(), TEACHER_THREADS);
    start(tablets, settings.port(), "--port");
    try {
      start(teacher, settings.teacherPort(), "--teacher-port");
    } catch (CannotListen e) {
      tablets.stop();
      throw e;
    }
    services.reach.opened(tablets.port());
    services.backups.serving(teacher.port());
    return new App(services, tablets, teacher, Watch.over(services));
  }

  /** Work marked by older rules is marked again before anybody looks, and the teacher is told what changed. */
  private static void markAgain(Services services) {
    WorkStore.MarkedAgain again = services.works.markAgain(done ->
        LOG.log(Level.INFO, "marking stored work again by the new rules: " + done + " hand-ins so far"));
    if (again.changed() > 0) {
      services.teachers.set(MARKED_AGAIN, String.format(Locale.US, "%,d of %,d marks", again.changed(), again.marks()));
    }
  }

  private static void start(Javalin server, int port, String option) {
    try {
      server.start();
    } catch (JavalinBindException e) {
      throw new CannotListen("Port " + port + " is taken by another program (or another Fewermore). Stop that one, "
          + "or choose another port with " + option + " — but then tablets need the new address.");
    }
  }

  public int port() {
    return tablets.port();
  }

  public int teacherPort() {
    return teacher.port();
  }

  /** The address of the teacher's pages. */
  public String teacherAddress() {
    return "http://localhost:" + teacherPort();
  }

  /** Where the data lie, for the teacher. */
  public String where() {
    return services.database.where();
  }

  public Reach reach() {
    return services.reach;
  }

  /** The address with today's door of the class the teacher looks at first; empty while there is no class. */
  public Optional<String> doorAddress() {
    return services.doorAddress();
  }

  Services services() {
    return services;
  }

  /** How often data were forced to disk since the start: for measuring. */
  public long forces() {
    return services.database.forces();
  }

  /** All routes of both doors with who may: for the test of the table. */
  public static List<Route> tabletRoutes() {
    return TabletRoutes.of(new TabletHandlers(null));
  }

  public static List<Route> teacherRoutes() {
    return TeacherRoutes.of(new TeacherHandlers(null));
  }

  @Override
  public void close() {
    services.backups.close();
    watch.close();
    services.room.close();
    services.live.close();
    teacher.stop();
    tablets.stop();
    services.database.close();
  }
}
