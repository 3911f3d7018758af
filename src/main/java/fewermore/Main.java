package fewermore;

import fewermore.classroom.InventedClass;
import fewermore.store.CannotOpen;
import fewermore.command.RestoreCommand;
import fewermore.store.DamagedData;
import fewermore.store.Database;
import fewermore.store.School;
import fewermore.web.App;
import fewermore.web.Network;
import fewermore.web.Serving;
import fewermore.web.Settings;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The program: with no command word it serves the app. */
@Command(
    name = "fewermore",
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    sortOptions = false,
    description = "Comparison word problems within 100: this laptop serves a room of tablets and reads the work.",
    exitCodeOnInvalidInput = 2,
    subcommands = {Commands.Mark.class, Commands.Read.class, Commands.Write.class, Commands.Estimate.class,
        Commands.Backup.class, Commands.Restore.class, Commands.Passphrase.class},
    synopsisSubcommandLabel = "[COMMAND]",
    footer = {"", "Nothing leaves this laptop, unless you name a school's database. Stop with Ctrl-C."})
public final class Main implements Callable<Integer> {
  @Spec CommandSpec program;

  @Option(names = "--data", paramLabel = "FOLDER",
      description = "where all data lie (default: ${DEFAULT-VALUE})")
  Path data = Path.of(System.getProperty("user.home"), "fewermore-data");

  @Option(names = "--port", paramLabel = "N", description = "the tablets' port (default: ${DEFAULT-VALUE})")
  int port = Settings.PORT;

  @Option(names = "--teacher-port", paramLabel = "N",
      description = "the teacher's port, reached from this laptop only (default: ${DEFAULT-VALUE})")
  int teacherPort = Settings.TEACHER_PORT;

  @Option(names = "--host", paramLabel = "ADDRESS",
      description = "the network address the tablets' port is opened on (default: every network)")
  String host = "0.0.0.0";

  @Option(names = "--public-address", paramLabel = "URL",
      description = "the address tablets use, where this machine can't know it, for example in a container "
          + "(default: found by itself)")
  String publicAddress = System.getenv("FEWERMORE_PUBLIC_ADDRESS");

  @Option(names = "--teacher-host", paramLabel = "ADDRESS", hidden = true,
      description = "the address the teacher's port is opened on; for a container only")
  String teacherHost = System.getenv().getOrDefault("FEWERMORE_TEACHER_HOST", Settings.LOOPBACK);

  @Mixin SchoolOptions ofSchool = new SchoolOptions();

  @Option(names = "--open", description = "also open your page in this laptop's browser")
  boolean open;

  @Option(names = "--demo", paramLabel = "CHILDREN", arity = "0..1", fallbackValue = "" + InventedClass.USUAL,
      description = "an invented class to look around in (24 children, or as many as you say), in a folder that is "
          + "removed at the end; --data is not touched")
  String demo;

  @Option(names = "--mend",
      description = "damaged data: takes the newest whole backup, adds every newer piece that is intact, and starts")
  boolean mend;

  /** Says the version the program was built as. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = Main.class.getPackage().getImplementationVersion();
      return new String[] {"Fewermore " + (version == null ? "(not packaged)" : version)};
    }
  }

  public static void main(String[] arguments) {
    boolean serveSaid = arguments.length > 0 && arguments[0].equals("serve");
    int code = commandLine().execute(serveSaid ? Arrays.copyOfRange(arguments, 1, arguments.length) : arguments);
    System.exit(code);
  }

  static CommandLine commandLine() {
    return new CommandLine(new Main())
        .setOut(new java.io.PrintWriter(new PrintStream(System.out, true, StandardCharsets.UTF_8), true))
        .setErr(new java.io.PrintWriter(new PrintStream(System.err, true, StandardCharsets.UTF_8), true))
        .setExecutionExceptionHandler((problem, line, result) -> {
          if (problem instanceof DamagedData damaged) {
            line.getErr().println(damaged.getMessage());
            line.getErr().println(RestoreCommand.offer(damaged.folder(), ZoneId.systemDefault()));
            return 1;
          }
          if (problem instanceof CannotOpen || problem instanceof App.CannotListen) {
            line.getErr().println(problem.getMessage());
            return 1;
          }
          throw problem;
        });
  }

  @Override
  public Integer call() throws Exception {
    Log.toTheConsole();
    Settings settings = new Settings(data, port, teacherPort, host, publicAddress, teacherHost);
    String page = "http://localhost:" + teacherPort;
    if (open && OpenPage.alreadyRuns(page)) {
      program.commandLine().getOut().println("Fewermore is running already: " + page);
      return OpenPage.show(page) ? 0 : 1;
    }
    if (demo == null) {
      School school = ofSchool.school();
      if (mend && school != null) {
        program.commandLine().getErr().println("--mend is for the data of a folder. A school's database is mended by whoever "
            + "looks after it, from its own backups.");
        return 2;
      }
      if (mend && RestoreCommand.mend(data, Clock.systemUTC().instant(), System.out) != 0) {
        return 1;
      }
      return serve(settings, school, new Greeting(null, open), () -> {}, database -> {
        Log.toAFile(settings.data());
        return App.start(settings, database, Network.ofThisMachine(), Clock.systemUTC());
      });
    }
    OptionalInt children = Demo.children(demo);
    if (children.isEmpty()) {
      program.commandLine().getErr().println(Demo.WHAT_IS_EXPECTED);
      return 2;
    }
    return Demo.run(settings, children.getAsInt(), new Greeting(Demo.PASSPHRASE, open));
  }

  /** Opens the app on its data. */
  interface Opening {
    App open(Database database);
  }

  /**
   * Serves until the program is told to stop; {@code afterwards} is run when everything is closed.
   *
   * @param school where the data lie, or null when they lie in the folder
   */
  static int serve(Settings settings, School school, Greeting greeting, Runnable afterwards, Opening opening)
      throws InterruptedException {
    Serving serving = Serving.begin(settings.data(), () -> {
      Database database = SchoolOptions.open(settings.data(), school);
      try {
        return opening.open(database);
      } catch (RuntimeException e) {
        database.close();
        throw e;
      }
    });
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(() -> {
      serving.close();
      afterwards.run();
      stopped.countDown();
    }, "stop"));
    greeting.print(serving.app(), new PrintStream(System.out, true, StandardCharsets.UTF_8));
    stopped.await();
    return 0;
  }
}
