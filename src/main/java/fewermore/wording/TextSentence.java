package fewermore.wording;

import fewermore.text.SourceSpan;
import java.util.List;

/**
 * A sentence of a text as its tokens, without the mark that ends it.
 *
 * @param asks whether a question mark ends it
 */
record TextSentence(List<Token> tokens, boolean asks, SourceSpan at) {
  TextSentence {
    tokens = List.copyOf(tokens);
  }

  boolean hasNumber() {
    return tokens.stream().anyMatch(token -> token.value() >= 0);
  }
}
