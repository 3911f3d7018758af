package fewermore.wording;

import fewermore.story.Thing;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Spanish that a teacher gives for words of her own problem: for nouns one, many and gender, for holders ("my brother")
 * one phrase. Her words go before the lexicon's. Whether they are right is not checked.
 *
 * @param nouns things, each with English and Spanish forms
 * @param holders holders that are no names, each with its Spanish phrase
 */
public record TeachersSpanish(List<Noun> nouns, List<Holder> holders) {
  /** Nothing given. */
  public static final TeachersSpanish NONE = new TeachersSpanish(List.of(), List.of());

  public TeachersSpanish {
    nouns = List.copyOf(nouns);
    holders = List.copyOf(holders);
  }

  /** Her noun for a thing, if she gave one. */
  public Optional<Noun> noun(Thing thing) {
    return nouns.stream().filter(noun -> noun.thing().equals(thing)).findFirst();
  }

  Optional<Holder> holder(String english) {
    String key = english.toLowerCase(Locale.ROOT);
    return holders.stream().filter(holder -> holder.english().toLowerCase(Locale.ROOT).equals(key)).findFirst();
  }
}
