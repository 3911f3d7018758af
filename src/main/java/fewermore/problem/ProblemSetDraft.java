package fewermore.problem;

import java.util.List;

/** Problems proposed for one day, in order, before the teacher takes them. */
public record ProblemSetDraft(List<Problem> problems) {
  public ProblemSetDraft {
    problems = List.copyOf(problems);
  }

  /** Whether both agreeing and disagreeing wording are there: without both, nothing tells story from cue word. */
  public boolean bothWordings() {
    return problems.stream().anyMatch(problem -> problem.kind().agrees())
        && problems.stream().anyMatch(problem -> !problem.kind().agrees());
  }
}
