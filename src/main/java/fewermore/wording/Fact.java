package fewermore.wording;

import fewermore.story.Wording;
import fewermore.text.SourceSpan;

/** What one clause of a text says or asks. */
sealed interface Fact {

  /** "Ana has 52 shells." */
  record Amount(Side side, Token number) implements Fact {}

  /** "Ana went to the beach": who does it may be left out in the next clause. */
  record Deed(Side side) implements Fact {}

  /**
   * "Ana has 14 more shells than Ben."
   *
   * @param reference what stands after <i>than</i>, or null when it is left out
   * @param word the comparing word
   */
  record Compared(Side subject, Side reference, Wording wording, Token number, SourceSpan word) implements Fact {}

  /** "How many shells does Ben have?" */
  record AskedAmount(Side side) implements Fact {}

  /**
   * "How many more shells does Ana have than Ben?", "What is the difference?"
   *
   * @param reference null when it is left out
   * @param goal whether more is needed to reach something: the subject has less now
   */
  record AskedDifference(Side subject, Side reference, Wording wording, SourceSpan word, boolean goal)
      implements Fact {}
}
