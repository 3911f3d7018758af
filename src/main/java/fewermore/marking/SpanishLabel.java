package fewermore.marking;

import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.wording.Lexicon;
import fewermore.wording.Noun;
import fewermore.wording.TeachersSpanish;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import org.apache.commons.text.similarity.LevenshteinDistance;

/**
 * A label in Spanish, read by the Spanish nouns of the story's things: "38 conchas", "Inés tiene conchas", "conchas
 * rayadas". A spelling counts that sounds the same in Mexico and the US Southwest (<i>conchaz, yaves</i>: b as v,
 * s as z and soft c, ll as y, a silent h; our rule, from memory), or that has one
 * wrong letter in a word of five letters or more.
 *
 * <p>Not read: sentences of more than one clause, and things that have no Spanish in the lexicon or of the teacher's.
 *
 * @param names the words of the persons of the story
 */
record SpanishLabel(Phrase thing, Phrase other, List<Phrase> wider, Set<String> names, boolean difference) {
  /** Words that would fit any story (general practice, no source). */
  static final Set<String> GENERAL = Set.of("cosa", "cosas", "eso", "esos", "esas", "estos", "estas", "objeto",
      "objetos", "numero", "numeros");

  private static final int MOST_WORDS = 24;
  private static final double SOUNDS_THE_SAME = 0.05;
  private static final double ONE_LETTER = 0.5;
  /** Letters a word must have before one wrong letter is a misspelling and not another word. */
  private static final int LONG_ENOUGH = 5;
  private static final Set<String> AROUND = Set.of("el", "la", "los", "las", "lo", "un", "una", "unos", "unas", "de",
      "del", "a", "al", "y", "hay", "son", "es", "fueron", "tiene", "tienen", "tenia", "tuvo", "encontro", "encuentra",
      "compro", "vio", "hizo", "leyo", "recogio", "junto", "gano", "comio", "conto", "cuenta", "vendio", "pesa",
      "mide", "cuesta", "dibujo", "planto", "guardo", "ella", "ellas", "ellos", "su", "sus", "mi", "mis", "en", "total",
      "solo", "todas", "todos", "cero", "uno", "dos", "tres", "cuatro", "cinco", "seis", "siete", "ocho", "nueve",
      "diez", "once", "doce", "trece", "catorce", "quince", "dieciseis", "diecisiete", "dieciocho", "diecinueve",
      "veinte", "treinta", "cuarenta", "cincuenta", "sesenta", "setenta", "ochenta", "noventa", "cien");
  private static final Set<String> COMPARING = Set.of("mas", "menos", "que");

  /** @return empty when a thing of the story has no Spanish, neither of the teacher's nor in the lexicon */
  static Optional<SpanishLabel> of(Comparison story, List<String> persons, TeachersSpanish given) {
    Optional<Phrase> thing = phrase(story.thing(), given);
    Optional<Phrase> other = story.otherThing() == null ? Optional.empty() : phrase(story.otherThing(), given);
    if (thing.isEmpty() || story.otherThing() != null && other.isEmpty()) {
      return Optional.empty();
    }
    Set<String> names = new LinkedHashSet<>();
    if (story.otherThing() == null) {
      persons.forEach(name -> names.addAll(LabelWords.of(name)));
    }
    return Optional.of(new SpanishLabel(thing.get(), other.orElse(null),
        story.wider().stream().flatMap(each -> phrase(each, given).stream()).toList(), names,
        story.unknown() == Role.DIFFERENCE));
  }

  /** The noun stands first in Spanish, and what tells it apart agrees with it. */
  private static Optional<Phrase> phrase(Thing thing, TeachersSpanish given) {
    return given.noun(thing).or(() -> Lexicon.noun(thing.many()).filter(noun -> noun.thing().equals(thing)))
        .filter(Noun::hasSpanish).map(noun -> {
          List<String> one = content(noun.spanishOne());
          List<String> many = content(noun.spanishMany());
          List<Set<String>> words = new ArrayList<>();
          for (int at = 0; at < many.size(); at++) {
            words.add(new LinkedHashSet<>(List.of(many.get(at), one.get(Math.min(at, one.size() - 1)))));
          }
          return new Phrase(words, 0, Set.of());
        });
  }

  private static List<String> content(String words) {
    return LabelWords.of(words).stream().filter(word -> !Set.of("de", "del", "la", "el").contains(word)).toList();
  }

  /** The words without what may stand around a thing; what is left is the thing, or no label. */
  Set<List<String>> cores(List<String> words) {
    if (words.size() > MOST_WORDS) {
      return Set.of();
    }
    Set<List<String>> cores = new LinkedHashSet<>();
    cores.add(words.stream().filter(word -> !around(word)).toList());
    cores.add(words.stream().filter(word -> !Set.of("de", "del", "la", "el").contains(word)).toList());
    return cores;
  }

  private boolean around(String word) {
    return AROUND.contains(word) || names.contains(word) || Character.isDigit(word.charAt(0))
        || difference && COMPARING.contains(word);
  }

  /** As {@link PhraseReader#read}, but each written word is one word of the phrase. */
  static void read(List<String> written, Phrase phrase, BiConsumer<Integer, Nearness> found) {
    if (!written.isEmpty() && written.size() <= phrase.words().size()) {
      assign(written, phrase, 0, 0, Nearness.SAME, found);
    }
  }

  private static void assign(
      List<String> written, Phrase phrase, int at, int used, Nearness near, BiConsumer<Integer, Nearness> found) {
    if (at == written.size()) {
      found.accept(used, near);
      return;
    }
    for (int i = 0; i < phrase.words().size(); i++) {
      if ((used >> i & 1) == 0) {
        Nearness best = Nearness.FAR;
        for (String form : phrase.words().get(i)) {
          best = best.orNearer(nearness(written.get(at), form));
        }
        Nearness all = near.plus(best);
        if (!all.far()) {
          assign(written, phrase, at + 1, used | 1 << i, all, found);
        }
      }
    }
  }

  private static Nearness nearness(String written, String form) {
    if (written.equals(form)) {
      return Nearness.SAME;
    }
    int letters = LevenshteinDistance.getDefaultInstance().apply(written, form);
    if (sound(written).equals(sound(form))) {
      return new Nearness(SOUNDS_THE_SAME, letters);
    }
    boolean anotherWord = Nearness.isCommon(written) || Lexicon.isSpanishNoun(written);
    return !anotherWord && letters <= 1 && form.length() >= LONG_ENOUGH ? new Nearness(ONE_LETTER, letters)
        : Nearness.FAR;
  }

  /** A rough sounding-out; accents are off already, so ñ is n. */
  static String sound(String word) {
    return Normalizer.normalize(word.toLowerCase(Locale.ROOT), Normalizer.Form.NFKD)
        .replace("ch", "C").replaceAll("qu(?=[ei])", "k").replaceAll("c(?=[ei])", "s").replaceAll("g(?=[ei])", "j")
        .replace("gu", "g").replace("ll", "y").replace("h", "").replace('v', 'b').replace('z', 's').replace('c', 'k')
        .replace('q', 'k').replace('x', 's').replaceAll("(.)\\1", "$1");
  }
}
