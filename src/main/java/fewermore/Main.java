package fewermore;

import fewermore.classroom.InventedClass;
import fewermore.store.CannotOpen;
import fewermore.store.Database;
import fewermore.web.App;
import fewermore.web.Network;
import fewermore.web.Settings;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
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
    subcommands = {Commands.Mark.class, Commands.Write.class},
    synopsisSubcommandLabel = "[COMMAND]",
    footer = {"", "Nothing leaves this laptop. Stop with Ctrl-C."})
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

  @Option(names = "--demo", paramLabel = "CHILDREN", arity = "0..1", fallbackValue = "" + InventedClass.USUAL,
      description = "an invented class to look around in (24 children, or as many as you say), in a folder that is "
          + "removed at the end; --data is not touched")
  String demo;

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
    Settings settings = new Settings(data, port, teacherPort, host, publicAddress);
    if (demo == null) {
      return serve(settings, new Greeting(null), () -> {}, database -> {
        Log.toAFile(settings.data());
        return App.start(settings, database, Network.ofThisMachine(), Clock.systemUTC());
      });
    }
    OptionalInt children = Demo.children(demo);
    if (children.isEmpty()) {
      program.commandLine().getErr().println(Demo.WHAT_IS_EXPECTED);
      return 2;
    }
    return Demo.run(settings, children.getAsInt());
  }

  /** Opens the app on the data of its folder. */
  interface Opening {
    App open(Database database);
  }

  /** Serves until the program is told to stop; {@code afterwards} is run when everything is closed. */
  static int serve(Settings settings, Greeting greeting, Runnable afterwards, Opening opening)
      throws InterruptedException {
    Database database = Database.open(settings.data());
    App app;
    try {
      app = opening.open(database);
    } catch (RuntimeException e) {
      database.close();
      throw e;
    }
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(() -> {
      app.close();
      afterwards.run();
      stopped.countDown();
    }, "stop"));
    greeting.print(app, settings, new PrintStream(System.out, true, StandardCharsets.UTF_8));
    stopped.await();
    return 0;
  }
}
