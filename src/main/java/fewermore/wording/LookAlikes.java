package fewermore.wording;

import fewermore.wording.ReadText.Reason;
import java.util.List;
import java.util.Set;

/**
 * Words that make a text something else than one comparison, however the rest reads: <i>times as many, each,
 * altogether, about, not</i>. Looked for before the grammar, so that the reason is told in the trade's words.
 */
final class LookAlikes {
  private static final Set<String> TIMES = Set.of("twice", "thrice", "half", "double", "doubled", "triple", "tripled",
      "quarter", "doubles", "halves", "halfway", "fraction", "percent");
  private static final Set<String> GROUPS = Set.of("each", "every", "per", "apiece", "equally", "average");
  private static final Set<String> TOTALS = Set.of("altogether", "combined", "sum", "total", "totals");
  private static final Set<String> LEFT = Set.of("remain", "remains", "remaining", "remained", "leftover", "leftovers");
  private static final Set<String> INEXACT = Set.of("nearly", "almost", "approximately", "roughly", "several", "dozens",
      "hundreds", "couple", "handful", "maybe", "most");
  private static final Set<String> NOT = Set.of("not", "never", "no", "none", "nobody", "neither", "nor", "without",
      "unless", "except", "cannot", "or", "either", "nothing");

  private LookAlikes() {}

  /** The first look-alike of a text, or null. */
  static Refusal in(List<TextSentence> sentences) {
    for (TextSentence sentence : sentences) {
      for (int i = 0; i < sentence.tokens().size(); i++) {
        Refusal refusal = at(sentence, i);
        if (refusal != null) {
          return refusal;
        }
      }
    }
    return null;
  }

  private static Refusal at(TextSentence sentence, int i) {
    Token token = sentence.tokens().get(i);
    switch (token.type()) {
      case NOT_WHOLE:
        return refusal(Reason.NOT_WHOLE, token, "This is not a whole number.", "Whole numbers from 0 up were expected.",
            "Write whole numbers, money in dollars or in cents.");
      case TOO_LARGE:
        return refusal(Reason.TOO_LARGE, token, "This number is too large.",
            "Numbers up to " + EnglishTokens.LARGEST + " were expected.", "Use smaller numbers.");
      case OTHER:
        if (token.low().equals("range")) {
          return refusal(Reason.INEXACT, token, "This is a range.", "One number was expected.", "Choose one number.");
        }
        if (token.low().equals("%")) {
          return refusal(Reason.TIMES, token, "A percent is not a difference.", "An amount was expected.",
              "Say how many more or fewer.");
        }
        return null;
      case WORD:
        return word(sentence, i, token);
      default:
        return null;
    }
  }

  private static Refusal word(TextSentence sentence, int i, Token token) {
    List<Token> tokens = sentence.tokens();
    Token next = i + 1 < tokens.size() ? tokens.get(i + 1) : null;
    Token before = i > 0 ? tokens.get(i - 1) : null;
    if (before != null && before.is(token.low())) {
      return refusal(Reason.UNREAD, token, "‘" + token.low() + "’ stands twice.", "It was expected once.",
          "Leave one out.");
    }
    if (token.in(TIMES) || token.is("times") && before != null && before.value() >= 0
        || token.is("times") && next != null && next.in(Set.of("as", "more", "the", "fewer", "less"))) {
      Token first = token.is("times") && before != null ? before : token;
      return new Refusal(Reason.TIMES, first.at().through(token.at()), quoted(first, token)
          + " is not a difference.", "A comparison says how many more or how many fewer.",
          "Say by how many one has more.");
    }
    if (token.in(GROUPS) && (sentence.hasNumber() || sentence.asks())) {
      return refusal(Reason.GROUPS, token, "‘" + token.low() + "’ makes equal groups.",
          "One amount for each of two was expected.", "Give both amounts, or one and the difference.");
    }
    if (token.in(TOTALS) && !isTotalOf(tokens, i) || token.is("in") && next != null && next.is("all")
        || token.is("together") && sentence.asks() || token.is("both") && (sentence.asks() || sentence.hasNumber())) {
      return refusal(Reason.TOTAL, token, "‘" + (token.is("in") ? "in all" : token.low()) + "’ puts amounts together.",
          "A comparison has one larger and one smaller amount, and their difference.",
          "Ask for one of the three alone.");
    }
    if (token.in(LEFT) || token.is("left") && isLeftOver(sentence, tokens, i)) {
      return refusal(Reason.CHANGE, token, "‘" + token.low() + "’ tells of an amount that has changed.",
          "Two amounts that stay were expected.", "Compare what two have, or use another kind of problem.");
    }
    if (token.in(INEXACT) && sentence.hasNumber() || isInexact(tokens, i)) {
      String words = token.in(Set.of("than", "least", "most", "few")) && before != null
          ? before.low() + " " + token.low() : token.low();
      return refusal(Reason.INEXACT, token, "‘" + words + "’ makes the number inexact.",
          "An exact number was expected.", "Leave the word out.");
    }
    if (token.is("as") && next != null && next.in(Set.of("many", "much", "tall", "long", "old", "heavy"))
        && !sentence.asks() || token.is("same") && next != null && next.in(Set.of("number", "amount", "many"))
        && !sentence.asks() || token.in(Set.of("equal", "equals"))) {
      String words = token.in(Set.of("as", "same")) ? token.low() + " " + next.low() : token.low();
      return refusal(Reason.EQUAL, token, "‘" + words + "’ tells of equal amounts.",
          "Two different amounts were expected.", "Say how many more or fewer one has.");
    }
    if (token.in(NOT) && !isIdiom(tokens, i) || token.isWord() && token.low().endsWith("n't")) {
      return refusal(Reason.NOT_PLAIN, token, "‘" + token.low() + "’ leaves more than one case.",
          "Sentences that say what is so were expected.", "Say it without ‘" + token.low() + "’.");
    }
    return null;
  }

  private static boolean isIdiom(List<Token> tokens, int i) {
    return tokens.get(i).is("no") && i + 1 < tokens.size() && tokens.get(i + 1).type() == Token.Type.END;
  }

  private static boolean isTotalOf(List<Token> tokens, int i) {
    return tokens.get(i).is("total") && i > 0 && tokens.get(i - 1).is("a") && i + 2 < tokens.size()
        && tokens.get(i + 1).is("of") && tokens.get(i + 2).isAmount();
  }

  /** "12 are left", "how many are left": not "the left shelf". */
  private static boolean isLeftOver(TextSentence sentence, List<Token> tokens, int i) {
    return (sentence.asks() || sentence.hasNumber()) && !(i > 0 && tokens.get(i - 1).in(Set.of("the", "on", "his",
        "her", "their", "my")));
  }

  /** "about 50", "more than 50", "at least 50", "over 50". */
  private static boolean isInexact(List<Token> tokens, int i) {
    boolean number = i + 1 < tokens.size() && tokens.get(i + 1).isAmount();
    Token token = tokens.get(i);
    return number && (token.in(Set.of("about", "around", "over", "under", "least", "most", "than", "nearly", "below",
        "above"))) || token.is("up") && i + 2 < tokens.size() && tokens.get(i + 1).is("to")
        && tokens.get(i + 2).isAmount() || token.is("few") && i > 0 && tokens.get(i - 1).is("a");
  }

  private static String quoted(Token first, Token last) {
    return "‘" + (first == last ? last.low() : first.value() >= 0 ? first.value() + " times" : "times") + "’";
  }

  private static Refusal refusal(Reason reason, Token at, String found, String expected, String advice) {
    return new Refusal(reason, at.at(), found, expected, advice);
  }
}
