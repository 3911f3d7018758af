package fewermore;

import fewermore.command.BackupCommand;
import fewermore.command.EstimateCommand;
import fewermore.command.MarkCommand;
import fewermore.command.ReadCommand;
import fewermore.command.RestoreCommand;
import fewermore.command.WriteCommand;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import fewermore.reasoning.ReasoningTable;
import java.nio.file.Files;
import fewermore.store.Database;
import fewermore.store.School;
import fewermore.web.ForgottenPassphrase;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The commands without a page: JSON lines on standard input, JSON lines on standard output, in order. */
final class Commands {
  private Commands() {}

  @Command(name = "mark", mixinStandardHelpOptions = true, exitCodeOnInvalidInput = 2,
      description = "Marks work: a story and a child's work a line become marks a line.",
      footer = {"", "A line that can't be used gives {\"id\":…,\"problem\":\"…\"} in its place; the exit code is then 3."})
  static final class Mark implements Callable<Integer> {
    @Override
    public Integer call() throws Exception {
      return MarkCommand.run(System.in, System.out);
    }
  }

  @Command(name = "read", mixinStandardHelpOptions = true, exitCodeOnInvalidInput = 2,
      description = "Reads problems: an English text a line becomes its story, or the reason why it is declined.",
      footer = {"", "A line that can't be used gives {\"id\":…,\"problem\":\"…\"} in its place; the exit code is then 3."})
  static final class Read implements Callable<Integer> {
    @Override
    public Integer call() throws Exception {
      return ReadCommand.run(System.in, System.out);
    }
  }

  @Command(name = "passphrase", mixinStandardHelpOptions = true, exitCodeOnInvalidInput = 2,
      description = "Sets a new passphrase for a teacher who forgot hers. Stop the app first.",
      footer = {"", "It asks for the passphrase, or takes the first line of standard input."})
  static final class Passphrase implements Callable<Integer> {
    @Option(names = "--data", paramLabel = "FOLDER", description = "where all data lie (default: ${DEFAULT-VALUE})")
    Path data = Path.of(System.getProperty("user.home"), "fewermore-data");

    @Mixin SchoolOptions ofSchool = new SchoolOptions();

    @Option(names = "--teacher", paramLabel = "NAME", description = "her name as on the sign-in page, if there are several")
    String teacher;

    @Override
    public Integer call() throws Exception {
      School school = ofSchool.school();
      if (school == null && !Files.exists(Database.dataFile(data))) {
        System.err.println("There are no data in " + data + ". Name the folder with --data.");
        return 1;
      }
      try (Database database = SchoolOptions.open(data, school)) {
        String said = ForgottenPassphrase.set(database, teacher, asked());
        boolean done = said.startsWith("Set.");
        (done ? System.out : System.err).println(said);
        return done ? 0 : 1;
      }
    }

    private static String asked() throws IOException {
      if (System.console() != null) {
        char[] typed = System.console().readPassword("The new passphrase: ");
        return typed == null ? "" : new String(typed);
      }
      String line = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)).readLine();
      return line == null ? "" : line;
    }
  }

  @Command(name = "write", mixinStandardHelpOptions = true, exitCodeOnInvalidInput = 2,
      description = "Writes problems: a story a line becomes a text a line.",
      footer = {"", "A line that can't be used gives {\"id\":…,\"problem\":\"…\"} in its place; the exit code is then 3."})
  static final class Write implements Callable<Integer> {
    @Spec CommandSpec spec;

    @Option(names = "--seed", paramLabel = "N", description = "the same seed gives the same text (default: 1)")
    long seed = 1;

    @Option(names = "--language", paramLabel = "en|es", description = "English or Spanish (default: en)")
    String language = "en";

    @Override
    public Integer call() throws Exception {
      if (!language.equals("en") && !language.equals("es")) {
        throw new ParameterException(spec.commandLine(), "--language: en or es was expected, found " + language);
      }
      return WriteCommand.run(System.in, System.out, seed, language);
    }
  }

  /** What both commands about backups take. */
  static final class OfBackup {
    @Option(names = "--data", paramLabel = "FOLDER", description = "where all data lie (default: ${DEFAULT-VALUE})")
    Path data = Path.of(System.getProperty("user.home"), "fewermore-data");

    @Mixin SchoolOptions ofSchool = new SchoolOptions();

    @Option(names = "--passphrase", description = "reads the passphrase of the backup from the first line of standard input")
    boolean locked;

    String passphrase() throws IOException {
      return !locked ? null : new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)).readLine();
    }
  }

  private static PrintStream utf8(PrintStream stream) {
    return new PrintStream(stream, true, StandardCharsets.UTF_8);
  }

  @Command(name = "backup", mixinStandardHelpOptions = true, exitCodeOnInvalidInput = 2,
      description = "Makes a verified backup of all data, also while Fewermore runs. It holds first names and work.",
      footer = {"", "Says in one line of JSON what it made, or {\"problem\":\"…\"}; the exit code is then 3."})
  static final class Backup implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", description = "the backup to be made")
    Path file;

    @Mixin OfBackup of = new OfBackup();

    @Override
    public Integer call() throws Exception {
      Log.toTheConsole();
      return BackupCommand.run(of.data, of.ofSchool.school(), file, of.passphrase(), Instant.now(), utf8(System.out), utf8(System.err));
    }
  }

  @Command(name = "restore", mixinStandardHelpOptions = true, exitCodeOnInvalidInput = 2,
      description = "Puts a backup in the place of the present data, which stay in a folder beside. Not while Fewermore runs.",
      footer = {"", "Says first how many pieces are newer than the backup, then what is there, a line of JSON each;"
          + " or {\"problem\":\"…\"}: the exit code is then 3 and the data are as they were."})
  static final class Restore implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", description = "the backup")
    Path file;

    @Mixin OfBackup of = new OfBackup();

    @Override
    public Integer call() throws Exception {
      Log.toTheConsole();
      School school = of.ofSchool.school();
      if (school != null) {
        return RestoreCommand.intoSchool(of.data, school, file, of.passphrase(), utf8(System.out), utf8(System.err));
      }
      return RestoreCommand.run(of.data, file, of.passphrase(), Instant.now(), utf8(System.out), utf8(System.err));
    }
  }

  @Command(name = "estimate", mixinStandardHelpOptions = true, exitCodeOnInvalidInput = 2,
      description = "Estimates ways of reasoning: a child's days of work a line become what may be said, and the next problem.",
      footer = {"", "A line that can't be used gives {\"child\":…,\"problem\":\"…\"} in its place; the exit code is then 3."})
  static final class Estimate implements Callable<Integer> {
    @Spec CommandSpec spec;

    @Option(names = "--table", paramLabel = "FILE", description = "the numbers of the estimate (default: those built in)")
    Path table;

    @Override
    public Integer call() throws Exception {
      return EstimateCommand.run(System.in, System.out, table == null ? ReasoningTable.standard() : read());
    }

    private ReasoningTable read() {
      try (var reader = Files.newBufferedReader(table)) {
        return ReasoningTable.read(reader);
      } catch (IOException e) {
        throw new ParameterException(spec.commandLine(), "--table: the file can't be read; check its name");
      } catch (ReasoningTable.Unusable problem) {
        throw new ParameterException(spec.commandLine(), "--table: " + problem.getMessage());
      }
    }
  }
}
