package fewermore.marking;

import fewermore.story.Thing;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * The words of a thing: its noun and, before or behind it, the words that tell it from another kind. Each
 * word is the set of its forms, one and many. A noun is also known by the plurals a child makes by rule
 * ("leafs", "mouses") and a unit by its short forms, but only as they stand: no spelling is near to those.
 *
 * @param exact further forms of the noun that count only as they stand
 * @param noun index of the noun: the word that changes from one to many, else the last
 */
record Phrase(List<Set<String>> words, int noun, Set<String> exact) {
  /** More words than this are no name of a thing. */
  private static final int MOST_WORDS = 6;

  Phrase {
    words = List.copyOf(words);
  }

  static Phrase of(Thing thing) {
    List<String> one = content(thing.one());
    List<String> many = content(thing.many());
    if (one.size() != many.size()) {
      one = many;
    }
    if (many.isEmpty()) {
      return new Phrase(List.of(), -1, Set.of());
    }
    int noun = many.size() - 1;
    for (int i = 0; i < many.size(); i++) {
      if (!one.get(i).equals(many.get(i))) {
        noun = i;
      }
    }
    List<Set<String>> words = new ArrayList<>();
    for (int i = 0; i < Math.min(MOST_WORDS, many.size()); i++) {
      words.add(i == noun ? new LinkedHashSet<>(List.of(many.get(i), one.get(i))) : Set.of(many.get(i)));
    }
    return new Phrase(words, Math.min(noun, words.size() - 1), byRule(one.get(noun), many.get(noun)));
  }

  /** A name: every word must be there, none of them is a noun. */
  static Phrase ofName(String name) {
    List<Set<String>> words = new ArrayList<>();
    content(name).stream().limit(MOST_WORDS).forEach(word -> words.add(Set.of(word)));
    return new Phrase(words, words.size() - 1, Set.of());
  }

  /** The words without articles and "of", which a child may leave out. */
  static List<String> content(String text) {
    List<String> all = LabelWords.of(text);
    List<String> content = all.stream().filter(word -> !Set.of("the", "a", "an", "of").contains(word)).toList();
    return content.isEmpty() ? all : content;
  }

  private static Set<String> byRule(String one, String many) {
    Set<String> forms = new LinkedHashSet<>(List.of(one + "s", many + "s"));
    if (one.matches(".*(?:s|x|z|ch|sh)")) {
      forms.add(one + "es");
    }
    forms.addAll(Units.shortForms(one));
    forms.addAll(Units.shortForms(many));
    return forms;
  }

  boolean isEmpty() {
    return words.isEmpty();
  }

  Set<String> nounForms() {
    return words.get(noun);
  }

  boolean sharesNounWith(Phrase other) {
    return nounForms().stream().anyMatch(other.nounForms()::contains);
  }

  /** Whether the word at an index, not the noun, tells this kind from the other. */
  boolean tells(int index, Phrase other) {
    return index != noun
        && other.words.stream().noneMatch(word -> word.stream().anyMatch(words.get(index)::contains));
  }
}
