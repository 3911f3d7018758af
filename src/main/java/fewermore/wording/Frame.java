package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.util.List;
import java.util.Optional;

/** The sentences of one story in one language; {@link WordingWriter} puts them in order. */
interface Frame {

  /** What must be known before the amounts, where a kind has not been named: "Tomas has spotted toads." */
  default Optional<Sentence> opening() {
    return Optional.empty();
  }

  /** "Tomas has 52 shells." */
  Sentence amount(Role role, boolean pronoun);

  /** "Ines has 14 fewer shells than Tomas." */
  Sentence comparing(boolean pronoun, boolean leftOut);

  /** All good ways to ask, the usual first. */
  List<Sentence> questions();

  /** Whether one holder has both amounts, so that every statement after the first may take a pronoun. */
  default boolean oneOwner() {
    return false;
  }

  /** Whose side the comparing sentence, or the question for the difference, begins with. */
  static Role subject(Comparison story) {
    return story.wording() == Wording.FEWER ? Role.SMALLER : Role.LARGER;
  }

  static Role reference(Comparison story) {
    return subject(story) == Role.LARGER ? Role.SMALLER : Role.LARGER;
  }

  static boolean asksDifference(Comparison story) {
    return story.unknown() == Role.DIFFERENCE;
  }
}
