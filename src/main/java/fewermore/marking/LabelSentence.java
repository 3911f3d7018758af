package fewermore.marking;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * What may stand around the thing in a label.
 *
 * <pre>
 * label   = front* thing tail*
 * front   = who | verb | number | small word | comparing word, when the difference is asked
 * who     = a person of the story | he | she | they …        ("Ines has 38 shells")
 * verb    = has | found | …, or any word between who and a number
 * tail    = number | verb | who verb | in all
 *         | comparing word or "than" who, when the difference is asked    ("14 shells more than Ines")
 *         | tall | old | …, when a measure is asked                       ("38 inches tall")
 * </pre>
 *
 * @param names the persons of the story, each by the words of the name
 * @param difference whether the difference is asked
 * @param measure whether the answer counts a unit of measure
 */
record LabelSentence(List<List<String>> names, boolean difference, boolean measure) {
  /** More words than this are no label. */
  private static final int MOST_WORDS = 24;

  private static final Set<String> PRONOUNS = Set.of("he", "she", "they", "it", "we", "i", "you", "him", "her", "them",
      "there", "answer");
  private static final Set<String> ARTICLES = Set.of("the", "a", "an");
  private static final Set<String> VERBS = Set.of("has", "have", "had", "haves", "hase", "hav", "got", "get", "gets",
      "is", "are", "was", "were", "be", "found", "find", "finds", "saw", "sees", "made", "makes", "make", "read",
      "reads",
      "picked", "picks", "pick", "collected", "collects", "counted", "counts", "bought", "buys", "sold", "sells", "ate",
      "eats", "drew", "draws", "baked", "bakes", "planted", "plants", "caught", "catches", "keeps", "kept", "owns",
      "owned", "holds", "held", "carried", "needs", "needed", "weighs", "weigh", "weighed", "measures", "measured",
      "costs", "cost", "scored", "scores", "wrote", "writes", "jumped", "jumps", "ran", "runs", "rode", "walked",
      "walks", "saved", "saves", "spent", "earned", "used", "uses", "grew", "grows", "lost", "won", "did", "does",
      "brought", "took", "gave", "put", "can", "will");
  private static final Set<String> SMALL = Set.of("the", "a", "an", "of", "some", "all", "these", "those", "this",
      "that", "his", "her", "their", "my", "its", "our", "about", "only", "just", "so", "and");
  private static final Set<String> MORE_OR_FEWER = Set.of("more", "fewer", "less", "mor", "moer", "fewr", "fewere");
  private static final Set<String> COMPARING = Set.of("taller", "shorter", "longer", "older", "younger", "heavier",
      "lighter", "wider", "higher", "farther", "further", "deeper", "bigger", "smaller", "larger");
  private static final Set<String> HOW_MUCH = Set.of("tall", "long", "old", "heavy", "wide", "high", "far", "deep",
      "short", "away");
  private static final Set<String> IN_ALL = Set.of("in", "all", "altogether", "total", "together");
  private static final Set<String> NUMBER_WORDS = Set.of("zero", "one", "two", "three", "four", "five", "six", "seven",
      "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen",
      "nineteen", "twenty", "thirty", "forty", "fourty", "fifty", "sixty", "seventy", "eighty", "ninety", "hundred");

  /** Every stretch of the words that could be the thing, the least cut first; the whole is one of them. */
  Set<List<String>> cores(List<String> words) {
    if (words.isEmpty() || words.size() > MOST_WORDS) {
      return Set.of();
    }
    Set<Integer> starts = starts(words);
    Set<Integer> ends = ends(words);
    Set<List<String>> cores = new LinkedHashSet<>();
    for (int start : starts) {
      for (int end : ends) {
        if (start < end) {
          cores.add(words.subList(start, end));
        }
      }
    }
    return cores;
  }

  private Set<Integer> starts(List<String> words) {
    TreeSet<Integer> starts = new TreeSet<>(Set.of(0));
    Set<Integer> afterWho = new TreeSet<>();
    for (int at = 0; at < words.size(); at++) {
      if (!starts.contains(at)) {
        continue;
      }
      String word = words.get(at);
      for (int end : whoEnds(words, at)) {
        starts.add(end);
        afterWho.add(end);
      }
      if (VERBS.contains(word) || SMALL.contains(word) || isNumber(word) || difference && isComparing(word)
          || afterWho.contains(at) && at + 1 < words.size() && isNumber(words.get(at + 1))) {
        starts.add(at + 1);
      }
    }
    return starts;
  }

  private Set<Integer> ends(List<String> words) {
    Set<Integer> ends = new TreeSet<>(java.util.Comparator.reverseOrder());
    ends.add(words.size());
    for (int end = words.size(); end > 0; end--) {
      if (!ends.contains(end)) {
        continue;
      }
      String word = words.get(end - 1);
      if (isNumber(word) || VERBS.contains(word) || IN_ALL.contains(word) || difference && isComparing(word)
          || measure && HOW_MUCH.contains(word)) {
        ends.add(end - 1);
      }
      for (int start = end - 1; start >= 0; start--) {
        if (whoEnds(words, start).contains(end) && start > 0) {
          boolean than = difference && words.get(start - 1).equals("than");
          ends.add(than ? start - 1 : start);
        }
      }
    }
    return ends;
  }

  /** Where a mention of somebody that starts at a place may end. */
  private Set<Integer> whoEnds(List<String> words, int start) {
    Set<Integer> ends = new TreeSet<>();
    if (PRONOUNS.contains(words.get(start))) {
      ends.add(start + 1);
    }
    int first = start + 1 < words.size() && ARTICLES.contains(words.get(start)) ? start + 1 : start;
    for (List<String> name : names) {
      int end = first + name.size();
      if (end <= words.size() && words.subList(first, end).equals(name)) {
        ends.add(end);
      }
    }
    boolean saysMore = start + 1 < words.size()
        && (VERBS.contains(words.get(start + 1)) || isNumber(words.get(start + 1)));
    if (saysMore && names.stream().anyMatch(name -> name.size() == 1 && isNear(words.get(start), name.get(0)))) {
      ends.add(start + 1);
    }
    return ends;
  }

  private static boolean isNear(String written, String name) {
    return !Nearness.of(written, name).far();
  }

  private boolean isComparing(String word) {
    return MORE_OR_FEWER.contains(word) || measure && COMPARING.contains(word);
  }

  private static boolean isNumber(String word) {
    return Character.isDigit(word.charAt(0)) || NUMBER_WORDS.contains(word);
  }

  /** Names as {@link LabelSentence} takes them. */
  static List<List<String>> nameWords(List<String> names) {
    List<List<String>> words = new ArrayList<>();
    names.forEach(name -> words.add(Phrase.content(name)));
    return words;
  }
}
