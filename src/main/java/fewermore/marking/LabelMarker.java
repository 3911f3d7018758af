package fewermore.marking;

import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.wording.TeachersSpanish;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Marks the label: does it name the thing counted, and, where two kinds are compared, the right one?
 *
 * <p>A label is read as what may stand around a thing (who, a verb, a number, an article, <i>more</i> or
 * <i>fewer</i> when the difference is asked) and the words between, each of which must be a word of a thing
 * of the story, or near to one in letters or in sound. A common word is itself, never a misspelling. What
 * is as near to the other thing as to the right one is not guessed.
 *
 * <p>A label that says nothing in English is read in Spanish, by the nouns the lexicon or the teacher has for the story's things:
 * in a class where both are spoken, either names what was counted, whichever the story was read in.
 */
public final class LabelMarker {
  /** Words that would fit any story (general practice, no source). */
  private static final Set<String> GENERAL = Set.of("thing", "things", "thingy", "thingies", "thingys", "stuff", "it",
      "them", "they", "these", "those", "that", "this", "ones", "item", "items", "object", "objects", "number",
      "numbers",
      "something");

  private LabelMarker() {}

  /** Never throws, whatever was written. */
  public static LabelVerdict mark(Comparison story, String written) {
    return mark(story, written, TeachersSpanish.NONE);
  }

  /** The same, with Spanish that the teacher gave for words of her own. */
  public static LabelVerdict mark(Comparison story, String written, TeachersSpanish given) {
    String seen = Visible.of(written);
    if (seen.isEmpty()) {
      return LabelVerdict.BLANK;
    }
    if (seen.length() > LabelWords.LONGEST) {
      return LabelVerdict.NOT_RECOGNISED;
    }
    List<String> words = LabelWords.of(seen);
    LabelVerdict english = english(story).of(words);
    if (english == LabelVerdict.NAMES_IT) {
      return english;
    }
    LabelVerdict spanish = spanish(story, words, given);
    return english == LabelVerdict.NOT_RECOGNISED ? spanish : english;
  }

  private static Reading english(Comparison story) {
    List<String> persons = persons(story);
    LabelSentence sentence = new LabelSentence(LabelSentence.nameWords(persons), story.unknown() == Role.DIFFERENCE,
        Phrase.content(story.thing().many()).stream().anyMatch(Units::isUnit));
    return new Reading(Phrase.of(story.thing()), story.otherThing() == null ? null : Phrase.of(story.otherThing()),
        story.wider().stream().map(Phrase::of).toList(), persons.stream().map(Phrase::ofName).toList(), GENERAL,
        sentence::cores, PhraseReader::read);
  }

  private static LabelVerdict spanish(Comparison story, List<String> words, TeachersSpanish given) {
    SpanishLabel label = SpanishLabel.of(story, persons(story), given).orElse(null);
    return label == null ? LabelVerdict.NOT_RECOGNISED
        : new Reading(label.thing(), label.other(), label.wider(), List.of(), SpanishLabel.GENERAL, label::cores,
            SpanishLabel::read).of(words);
  }

  private static List<String> persons(Comparison story) {
    return Stream.of(story.persons().larger(), story.persons().smaller())
        .filter(Objects::nonNull).filter(name -> !LabelWords.of(name).isEmpty()).toList();
  }

  /** Tells each way to read written words as a phrase: its words that were read, as bits, and how near. */
  private interface Words {
    void read(List<String> written, Phrase phrase, BiConsumer<Integer, Nearness> found);
  }

  /** One story's things in one language, and how near a label comes to each. */
  private static final class Reading {
    private final Phrase thing;
    private final Phrase other;
    private final List<Phrase> wider;
    private final List<Phrase> names;
    private final Set<String> general;
    private final Function<List<String>, Set<List<String>>> cores;
    private final Words reader;
    private Nearness namesIt = Nearness.FAR;
    private Nearness otherThing = Nearness.FAR;
    private Nearness tooGeneral = Nearness.FAR;
    private Nearness person = Nearness.FAR;

    Reading(Phrase thing, Phrase other, List<Phrase> wider, List<Phrase> names, Set<String> general,
        Function<List<String>, Set<List<String>>> cores, Words reader) {
      this.thing = thing;
      this.other = other;
      this.wider = wider;
      this.names = names;
      this.general = general;
      this.cores = cores;
      this.reader = reader;
    }

    LabelVerdict of(List<String> words) {
      for (List<String> core : cores.apply(words)) {
        read(core);
        if (namesIt.same()) {
          return LabelVerdict.NAMES_IT;
        }
      }
      return verdict();
    }

    private void read(List<String> core) {
      List<String> content = core.stream().filter(word -> !word.equals("of")).toList();
      reader.read(content, thing, (found, near) -> {
        if (names(thing, other, found)) {
          namesIt = namesIt.orNearer(near);
        } else if (has(found, thing.noun())) {
          tooGeneral = tooGeneral.orNearer(near);
        }
      });
      if (namesIt.same()) {
        return;
      }
      if (other != null) {
        reader.read(content, other, (found, near) -> {
          if (names(other, thing, found)) {
            otherThing = otherThing.orNearer(near);
          } else if (has(found, other.noun())) {
            tooGeneral = tooGeneral.orNearer(near);
          }
        });
      }
      for (Phrase word : wider) {
        reader.read(content, word, (found, near) -> {
          if (has(found, word.noun())) {
            tooGeneral = tooGeneral.orNearer(near);
          }
        });
      }
      for (Phrase name : names) {
        reader.read(content, name, (found, near) -> {
          if (found == (1 << name.words().size()) - 1) {
            person = person.orNearer(near);
          }
        });
      }
      if (core.size() == 1 && general.contains(core.get(0))) {
        tooGeneral = Nearness.SAME;
      }
    }

    /** With one kind, or kinds of different nouns, the noun is enough; else a word that tells them apart, too. */
    private static boolean names(Phrase phrase, Phrase rival, int found) {
      if (!has(found, phrase.noun())) {
        return false;
      }
      if (rival == null || !phrase.sharesNounWith(rival) || found == (1 << phrase.words().size()) - 1) {
        return true;
      }
      for (int i = 0; i < phrase.words().size(); i++) {
        if (has(found, i) && phrase.tells(i, rival)) {
          return true;
        }
      }
      return false;
    }

    private static boolean has(int found, int index) {
      return (found >> index & 1) == 1;
    }

    private LabelVerdict verdict() {
      if (tooGeneral.same()) {
        return LabelVerdict.TOO_GENERAL;
      }
      if (otherThing.same()) {
        return LabelVerdict.OTHER_THING;
      }
      if (person.same()) {
        return LabelVerdict.A_PERSON;
      }
      if (clearly(namesIt, otherThing, tooGeneral, person)) {
        return LabelVerdict.NAMES_IT;
      }
      if (clearly(otherThing, namesIt, tooGeneral, person)) {
        return LabelVerdict.OTHER_THING;
      }
      if (clearly(tooGeneral, namesIt, otherThing, person)) {
        return LabelVerdict.TOO_GENERAL;
      }
      return clearly(person, namesIt, otherThing, tooGeneral) ? LabelVerdict.A_PERSON : LabelVerdict.NOT_RECOGNISED;
    }

    private static boolean clearly(Nearness one, Nearness... others) {
      return Stream.of(others).allMatch(one::nearerThan);
    }
  }
}
