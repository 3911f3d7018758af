package fewermore;

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
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Option;

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

  @Option(names = "--demo", paramLabel = "CHILDREN", arity = "0..1", fallbackValue = "24",
      description = "an invented class to look around in (24 children, or as many as you say), in a folder that is "
          + "removed at the end; --data is not touched")
  Integer demo;

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
    if (demo != null) {
      return Demo.run(settings, demo, Main::serve);
    }
    return serve(settings);
  }

  private static int serve(Settings settings) throws InterruptedException {
    Database database = Database.open(settings.data());
    App app;
    try {
      Log.toAFile(settings.data());
      app = App.start(settings, database, Network.ofThisMachine(), Clock.systemUTC());
    } catch (RuntimeException e) {
      database.close();
      throw e;
    }
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(() -> {
      app.close();
      stopped.countDown();
    }, "stop"));
    new Greeting(app, settings).print(new PrintStream(System.out, true, StandardCharsets.UTF_8));
    stopped.await();
    return 0;
  }
}
