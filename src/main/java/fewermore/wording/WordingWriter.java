package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.story.Role;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/** From a story to its text. At most ten words a sentence in English, one relation a sentence, numbers as digits. */
public final class WordingWriter {
  private WordingWriter() {}

  /**
   * Tells a story in a scene.
   *
   * @return {@link WrittenText}, or the reason when a noun or holder has no Spanish
   */
  public static Writing write(Comparison story, Scene scene, Language language, Shape shape) {
    return language == Language.ENGLISH ? english(story, scene, shape) : spanish(story, scene, shape);
  }

  /**
   * Tells a story that came from outside, in a scene found for it and a shape drawn for it.
   *
   * @return {@link WrittenText}, or the reason: no holders, or no Spanish
   */
  public static Writing write(Comparison story, Language language, Random random) {
    return write(story, language, random, TeachersSpanish.NONE);
  }

  /** The same, with Spanish for words that are not ours. */
  public static Writing write(Comparison story, Language language, Random random, TeachersSpanish spanish) {
    Optional<Scene> scene = Lexicon.sceneOf(story, random, spanish);
    if (scene.isEmpty()) {
      return new Writing.Declined(Writing.Reason.NO_HOLDERS, "persons: two different names were expected, larger "
          + "for who has more and smaller for who has fewer; give both, or two kinds of thing");
    }
    return write(story, scene.get(), language, Shape.draw(random));
  }

  /** The shapes that give different English texts for this story, the plain one first. */
  public static List<Shape> shapes(Comparison story, Scene scene) {
    Map<String, Shape> byText = new LinkedHashMap<>();
    for (Shape shape : Shape.all()) {
      byText.putIfAbsent(english(story, scene, shape).text(), shape);
    }
    return List.copyOf(byText.values());
  }

  /** Tells a story in English, which never fails. */
  public static WrittenText english(Comparison story, Scene scene, Shape shape) {
    List<Sentence> sentences =
        sentences(story, EnglishFrame.of(story, scene), shape, ExtraNumbers.english(story, scene));
    return new WrittenText(Language.ENGLISH, sentences, story.thing().many());
  }

  private static Writing spanish(Comparison story, Scene scene, Shape shape) {
    String missing = withoutSpanish(scene);
    if (missing != null) {
      return new Writing.Declined(Writing.Reason.NO_SPANISH,
          "no Spanish is known for \"" + missing + "\"; give the Spanish word, one and many, and its gender");
    }
    List<Sentence> sentences =
        sentences(story, SpanishFrame.of(story, scene), shape, ExtraNumbers.spanish(story, scene));
    return new WrittenText(Language.SPANISH, sentences, spanishLabel(story, scene));
  }

  private static List<Sentence> sentences(Comparison story, Frame frame, Shape shape, List<Sentence> extras) {
    List<Sentence> sentences = new ArrayList<>();
    List<Sentence> questions = frame.questions();
    Sentence question = questions.get(shape.otherQuestion() ? questions.size() - 1 : 0);
    if (shape.questionFirst()) {
      sentences.add(question);
    }
    if (story.unknown() == Role.DIFFERENCE) {
      Role first = shape.turned() ? Role.SMALLER : Role.LARGER;
      sentences.add(frame.amount(first, false));
      sentences.add(frame.amount(first == Role.LARGER ? Role.SMALLER : Role.LARGER,
          shape.pronoun() && frame.oneOwner()));
    } else {
      addStatements(sentences, story, frame, shape);
    }
    sentences.addAll(extras);
    if (!shape.questionFirst()) {
      sentences.add(question);
    }
    return sentences;
  }

  private static void addStatements(List<Sentence> sentences, Comparison story, Frame frame, Shape shape) {
    Role known = story.unknown() == Role.LARGER ? Role.SMALLER : Role.LARGER;
    Optional<Sentence> opening = shape.questionFirst() ? Optional.empty() : frame.opening();
    if (shape.turned()) {
      opening.ifPresent(sentences::add);
      sentences.add(frame.comparing(false, false));
      sentences.add(frame.amount(known, shape.pronoun() && frame.oneOwner()));
    } else {
      boolean sameSubject = frame.oneOwner() || opening.isEmpty() && known == Frame.subject(story);
      sentences.add(frame.amount(known, false));
      opening.ifPresent(sentences::add);
      sentences.add(frame.comparing(shape.pronoun() && sameSubject, shape.leftOut()));
    }
  }

  private static String withoutSpanish(Scene scene) {
    for (Noun noun : scene.nouns()) {
      if (!noun.hasSpanish()) {
        return noun.many();
      }
    }
    for (Holder holder : scene.holders()) {
      if (holder.spanish() == null) {
        return holder.english();
      }
    }
    return null;
  }

  private static String spanishLabel(Comparison story, Scene scene) {
    return scene.nouns().stream().filter(noun -> noun.many().equals(story.thing().many())).findFirst()
        .map(Noun::spanishMany).orElseThrow();
  }
}
