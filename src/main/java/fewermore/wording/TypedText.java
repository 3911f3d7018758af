package fewermore.wording;

import fewermore.text.SourceSpan;
import java.util.ArrayList;
import java.util.List;

/** A teacher's own text as a child's page shows it: her words untouched, a sentence a line, numbers spoken as words. */
public final class TypedText {
  private TypedText() {}

  /** @param label what the answer counts, many */
  public static WrittenText of(String text, String label) {
    List<Sentence> sentences = new ArrayList<>();
    for (TextSentence sentence : EnglishTokens.of(text)) {
      String shown = sentence.at().of(text).strip().replaceAll("\\s+", " ");
      if (!shown.isEmpty()) {
        sentences.add(new Sentence(shown, spoken(text, sentence)));
      }
    }
    return new WrittenText(Language.ENGLISH, sentences, label);
  }

  /** Where each sentence stands, in order. */
  public static List<SourceSpan> sentences(String text) {
    return EnglishTokens.of(text).stream().map(TextSentence::at).toList();
  }

  private static String spoken(String text, TextSentence sentence) {
    StringBuilder spoken = new StringBuilder();
    int here = sentence.at().start();
    for (Token token : sentence.tokens()) {
      if (token.type() == Token.Type.NUMBER || token.type() == Token.Type.MONEY) {
        SourceSpan at = token.at();
        spoken.append(text, here, at.start()).append(EnglishNumbers.words(token.value()));
        if (token.type() == Token.Type.MONEY) {
          spoken.append(' ').append(token.low()).append(token.value() == 1 ? "" : "s");
        }
        here = at.end();
      }
    }
    return spoken.append(text, here, sentence.at().end()).toString().strip().replaceAll("\\s+", " ");
  }
}
