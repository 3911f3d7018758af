package fewermore.problem;

import fewermore.story.Kind;
import fewermore.wording.Language;

/** Prints problems to read through: {@code ReadThrough [how many] [first seed]}. */
public final class ReadThrough {
  private ReadThrough() {}

  public static void main(String[] args) {
    int count = args.length > 0 ? Integer.parseInt(args[0]) : 60;
    long first = args.length > 1 ? Long.parseLong(args[1]) : 0;
    for (int i = 0; i < count; i++) {
      Problem problem = ProblemWriter.generate(Kind.values()[i % 6], NumberRange.values()[i / 6 % 3],
          Regrouping.values()[i / 2 % 3], first + i);
      System.out.println(problem.kind().id() + " " + problem.scenario() + " = " + problem.story().answer() + " "
          + problem.english().label());
      System.out.println("  " + problem.english().text());
      System.out.println("  " + problem.written(Language.SPANISH).map(text -> text.text()).orElse("-"));
    }
  }
}
