package fewermore;

import fewermore.command.MarkCommand;
import fewermore.command.WriteCommand;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
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
}
