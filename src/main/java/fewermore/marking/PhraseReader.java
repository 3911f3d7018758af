package fewermore.marking;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.BiConsumer;

/**
 * Reads written words as words of a phrase, in any order, none left over. Neighbors may be written as one
 * ("polarbear") and one as neighbors ("post cards").
 */
final class PhraseReader {
  /** More written words than this are not tried in every way of joining them. */
  private static final int MOST_WORDS = 5;

  private PhraseReader() {}

  /**
   * Tells each way to read the written words.
   *
   * @param found takes the phrase's words that were read, as bits, and how near the spelling is
   */
  static void read(List<String> written, Phrase phrase, BiConsumer<Integer, Nearness> found) {
    if (written.isEmpty() || written.size() > MOST_WORDS || phrase.isEmpty()) {
      return;
    }
    for (List<Group> right : groupings(phrase.words().size())) {
      for (List<Group> left : groupings(written.size())) {
        if (left.size() <= right.size()) {
          assign(written, phrase, left, right, 0, 0, Nearness.SAME, found);
        }
      }
    }
  }

  /** Neighbors taken as one word: from {@code start}, {@code length} of them. */
  private record Group(int start, int length) {
    int bits() {
      return ((1 << length) - 1) << start;
    }
  }

  private static List<List<Group>> groupings(int size) {
    List<List<Group>> all = new ArrayList<>();
    for (int joins = 0; joins < 1 << size - 1; joins++) {
      List<Group> groups = new ArrayList<>();
      int start = 0;
      for (int i = 0; i < size; i++) {
        if (i == size - 1 || (joins >> i & 1) == 0) {
          groups.add(new Group(start, i + 1 - start));
          start = i + 1;
        }
      }
      all.add(groups);
    }
    return all;
  }

  private static void assign(List<String> written, Phrase phrase, List<Group> left, List<Group> right, int at, int used,
      Nearness near, BiConsumer<Integer, Nearness> found) {
    if (at == left.size()) {
      found.accept(used, near);
      return;
    }
    Group here = left.get(at);
    List<String> parts = written.subList(here.start(), here.start() + here.length());
    for (Group there : right) {
      if ((used & there.bits()) == 0) {
        Nearness nearer = near.plus(nearness(parts, phrase, there));
        if (!nearer.far()) {
          assign(written, phrase, left, right, at + 1, used | there.bits(), nearer, found);
        }
      }
    }
  }

  private static Nearness nearness(List<String> parts, Phrase phrase, Group there) {
    Nearness best = Nearness.FAR;
    for (String form : forms(phrase, there)) {
      Nearness near = parts.size() == 1 ? Nearness.of(parts.get(0), form) : Nearness.ofJoined(parts, form);
      if (near.byEar() < best.byEar()) {
        best = near;
      }
    }
    return best;
  }

  private static Set<String> forms(Phrase phrase, Group group) {
    if (group.length() == 1) {
      return phrase.words().get(group.start());
    }
    Set<String> joined = Set.of("");
    for (Set<String> word : phrase.words().subList(group.start(), group.start() + group.length())) {
      Set<String> longer = new java.util.LinkedHashSet<>();
      joined.forEach(start -> word.forEach(form -> longer.add(start + form)));
      joined = longer;
    }
    return joined;
  }
}
