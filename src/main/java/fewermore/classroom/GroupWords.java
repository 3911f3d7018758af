package fewermore.classroom;

import fewermore.reasoning.Focus;
import fewermore.reasoning.Statement;
import fewermore.story.Comparison;

/** What a group is called and what to say and ask in it: things to talk about, never levels. */
public final class GroupWords {
  private GroupWords() {}

  public static String name(Focus focus) {
    return switch (focus) {
      case WHO_HAS_MORE -> "Who has more, and what is asked";
      case THE_GAP_IS_NOT_AN_AMOUNT -> "The gap is not an amount";
      case WRITING_THE_SUBTRACTION -> "Writing the subtraction";
      case LOOK_CLOSER -> "Look closer";
      case ON_THEIR_OWN -> "On their own";
    };
  }

  /** Why these children sit together. */
  public static String why(Focus focus) {
    return switch (focus) {
      case WHO_HAS_MORE -> "Their equations follow a word, or one operation, where the amounts say something else.";
      case THE_GAP_IS_NOT_AN_AMOUNT -> "The number of the difference stands in their work where an amount is asked, or an amount where the difference is asked.";
      case WRITING_THE_SUBTRACTION -> "They write the smaller number first. The two numbers are the right ones.";
      case LOOK_CLOSER -> "Their work fits more than one way so far. Sit with them while they do the problem that tells most.";
      case ON_THEIR_OWN -> "Their work says what the problem says, there is no work yet, or no sitting would fit better today.";
    };
  }

  /** The one question to put about the first problem. */
  public static String ask(Focus focus, Comparison first) {
    return switch (focus) {
      case WHO_HAS_MORE -> named(first.persons().larger()) && named(first.persons().smaller()) ? "Who has more?" : "Which is more?";
      case THE_GAP_IS_NOT_AN_AMOUNT -> "Whose number is that, or is it the gap?";
      case WRITING_THE_SUBTRACTION -> "Which number is there before anything is taken away?";
      case LOOK_CLOSER -> "How did you know what to do?";
      case ON_THEIR_OWN -> "Which of your problems was the hardest?";
    };
  }

  /** A name, not "pears" or "the tower". */
  private static boolean named(String who) {
    return who == null || Character.isUpperCase(who.charAt(0));
  }

  /** What the work says of one child, in a few words. */
  public static String said(ChildReasoning child) {
    Statement says = child.says();
    if (child.setAside().isPresent()) {
      return "you put aside what it would say";
    }
    return switch (says.strength()) {
      case TOO_EARLY -> "too early to tell";
      case LOOKS_AS_IF, CLEAR, CHANGED -> FindingWords.way(says.way()) + " (" + says.strength().word() + ")";
      case MIXED -> "follows no one way so far";
    };
  }
}
