package fewermore.problem;

import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.wording.Language;
import fewermore.wording.WrittenText;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A word problem: its story and the text the child reads.
 *
 * @param scenario the id of the scenario it was written from, or null for a teacher's own
 * @param seed what it was generated from; the same seed gives the same problem. 0 for a teacher's own
 * @param english the English text
 * @param spanish the Spanish text of the same story, or null when there is none yet
 */
public record Problem(Comparison story, String scenario, long seed, WrittenText english, WrittenText spanish) {
  public Problem {
    Objects.requireNonNull(story);
    Objects.requireNonNull(english);
  }

  public Kind kind() {
    return story.kind();
  }

  public Optional<WrittenText> written(Language language) {
    return Optional.ofNullable(language == Language.ENGLISH ? english : spanish);
  }

  /** Pairs of answers that this problem's numbers can't tell apart; empty when the numbers are clean. */
  public List<NotSeparated> notSeparated() {
    return Cleanness.notSeparated(story.amounts(), story.unknown());
  }
}
