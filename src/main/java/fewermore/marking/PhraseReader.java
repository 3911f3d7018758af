package fewermore.marking;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;

/**
 * Reads written words as words of a phrase, in any order, none left over. Neighbors may be written as one
 * ("polarbear") and one as neighbors ("post cards").
 */
final class PhraseReader {
  /** More written words than this are not tried in every way of joining them. */
  private static final int MOST_WORDS = 5;
  /** Longest written word that is cut into several. */
  private static final int LONGEST = 30;

  private PhraseReader() {}

  /**
   * Tells each way to read the written words, words as they stand first; when they are the phrase's very
   * words, no more.
   *
   * @param found takes the phrase's words that were read, as bits, and how near the spelling is
   */
  static void read(List<String> written, Phrase phrase, BiConsumer<Integer, Nearness> found) {
    if (written.size() > MOST_WORDS && written.stream().allMatch(word -> word.length() == 1)) {
      read(List.of(String.join("", written)), phrase, found);
      return;
    }
    if (written.isEmpty() || written.size() > MOST_WORDS || phrase.isEmpty()) {
      return;
    }
    boolean[] exact = {false};
    BiConsumer<Integer, Nearness> noting = (bits, near) -> {
      exact[0] |= near.same();
      found.accept(bits, near);
    };
    for (List<Group> right : groupings(phrase.words().size())) {
      for (List<Group> left : groupings(written.size())) {
        if (left.size() <= right.size() && !exact[0]) {
          assign(written, phrase, left, right, 0, 0, Nearness.SAME, noting);
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
    if (there.length() > 1) {
      return parts.size() > 1 || Nearness.isCommon(parts.get(0))
          ? Nearness.FAR : runTogether(parts.get(0), phrase, there.start(), there.length());
    }
    if (there.start() == phrase.noun() && phrase.exact().contains(String.join("", parts))) {
      return Nearness.SAME;
    }
    Nearness best = Nearness.FAR;
    for (String form : phrase.words().get(there.start())) {
      best = best.orNearer(parts.size() == 1 ? Nearness.of(parts.get(0), form) : Nearness.ofJoined(parts, form));
    }
    return best;
  }

  /** One written word for several of the phrase: cut where every piece is near to its own word. */
  private static Nearness runTogether(String written, Phrase phrase, int from, int length) {
    Nearness best = Nearness.FAR;
    if (written.length() > LONGEST) {
      return best;
    }
    for (String form : phrase.words().get(from)) {
      if (length == 1) {
        best = best.orNearer(Nearness.spelled(written, form));
        continue;
      }
      for (int cut = 1; cut < written.length(); cut++) {
        Nearness first = Nearness.spelled(written.substring(0, cut), form);
        if (!first.far()) {
          best = best.orNearer(first.plus(runTogether(written.substring(cut), phrase, from + 1, length - 1)));
        }
      }
    }
    return best;
  }
}
