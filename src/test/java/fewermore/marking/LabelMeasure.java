package fewermore.marking;

import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.BiPredicate;
import org.apache.commons.codec.EncoderException;
import org.apache.commons.codec.StringEncoder;
import org.apache.commons.codec.language.Caverphone2;
import org.apache.commons.codec.language.DoubleMetaphone;
import org.apache.commons.codec.language.MatchRatingApproachEncoder;
import org.apache.commons.codec.language.Metaphone;
import org.apache.commons.codec.language.Nysiis;
import org.apache.commons.codec.language.RefinedSoundex;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import org.apache.commons.text.similarity.JaroWinklerSimilarity;
import org.apache.commons.text.similarity.LevenshteinDistance;

/**
 * Measures label marking on real misspellings and on the near-word traps of the label spec, and compares
 * ways to judge a spelling. The misspellings stay where they are: a file of tab-separated lines
 * {@code correct, written, source} is named on the command line.
 *
 * <p>Nouns (a plural with its singular) are shuffled with a fixed seed; two thirds serve to choose a way and its
 * limit, the last third is held back and only measured.
 */
public final class LabelMeasure {
  private static final long SEED = 20261125;
  private static final double LEVEL = 0.95;
  private static final Map<String, String> ONE = Map.of("people", "person", "thieves", "thief", "glasses", "glass",
      "boys", "boy", "socks", "sock");

  record Misspelling(String correct, String written) {
    String noun() {
      return ONE.getOrDefault(correct, correct.endsWith("s") && !correct.endsWith("ss")
          ? correct.substring(0, correct.length() - 1) : correct);
    }

    Thing thing() {
      return new Thing(noun(), noun().equals(correct) ? plural(correct) : correct);
    }

    private static String plural(String one) {
      return switch (one) {
        case "person" -> "people";
        case "thief" -> "thieves";
        default -> one.matches(".*(s|x|ch|sh)") ? one + "es"
            : one.matches(".*[^aeiou]y") ? one.substring(0, one.length() - 1) + "ies" : one + "s";
      };
    }

    int lettersOff() {
      return LevenshteinDistance.getDefaultInstance().apply(written, correct);
    }

    /** Written forms that are words and do not sound the same are no misspellings to be read. */
    boolean isAnotherWord() {
      return CommonWords.contains(written.replace(" ", "")) && !CommonWords.soundAlike(written, correct);
    }
  }

  private LabelMeasure() {}

  public static void main(String[] args) throws IOException {
    if (args.length != 1) {
      System.out.println("Give the path of the file of misspellings: lines of correct, written, source with tabs"
          + " between.");
      return;
    }
    List<Misspelling> all = read(Path.of(args[0]));
    List<String> nouns = new ArrayList<>(all.stream().map(Misspelling::noun).distinct().sorted().toList());
    Collections.shuffle(nouns, new Random(SEED));
    List<String> heldBack = nouns.subList(0, nouns.size() / 3);
    System.out.printf("%d misspellings of %d nouns; %d nouns held back (seed %d)%n", all.size(), nouns.size(),
        heldBack.size(), SEED);

    List<Misspelling> chosenOn = all.stream().filter(each -> !heldBack.contains(each.noun())).toList();
    List<Misspelling> measuredOn = all.stream().filter(each -> heldBack.contains(each.noun())).toList();
    compareWays(chosenOn, measuredOn);
    System.out.println();
    report("chosen on  ", chosenOn, true);
    report("held back  ", measuredOn, false);
    var traps = SpecFile.read("near-words.md");
    long read = traps.stream().filter(trap ->
        LabelMarker.mark(trap.story(), trap.cell("written")) == LabelVerdict.NAMES_IT).count();
    System.out.printf("near words read as the thing %s%n", share((int) read, traps.size()));
  }

  static List<Misspelling> read(Path file) throws IOException {
    return Files.readAllLines(file).stream().skip(1).map(line -> line.split("\t"))
        .map(cells -> new Misspelling(cells[0].toLowerCase(Locale.ROOT), cells[1].toLowerCase(Locale.ROOT))).toList();
  }

  private static LabelVerdict mark(Misspelling each) {
    return LabelMarker.mark(story(each.thing()), each.written());
  }

  private static Comparison story(Thing thing) {
    return new Comparison(new Persons("Priya", "Jonah"), thing, null, List.of(), new Relation(61, 35, 26), Role.SMALLER,
        Wording.FEWER, List.of());
  }

  private static void report(String title, List<Misspelling> some, boolean showMissed) {
    List<Misspelling> counted = some.stream().filter(each -> !each.isAnotherWord()).toList();
    List<Misspelling> farOff = counted.stream().filter(each -> each.lettersOff() >= 2).toList();
    System.out.printf("%s names-it %s; two or more edits off %s; %d are other words, counted apart%n", title,
        share(named(counted), counted.size()), share(named(farOff), farOff.size()), some.size() - counted.size());
    if (showMissed) {
      counted.stream().filter(each -> mark(each) != LabelVerdict.NAMES_IT)
          .forEach(each -> System.out.println("  not read: " + each.correct() + " as " + each.written()));
    }
  }

  private static int named(List<Misspelling> some) {
    return (int) some.stream().filter(each -> mark(each) == LabelVerdict.NAMES_IT).count();
  }

  static String share(int of, int all) {
    ConfidenceInterval wilson = new WilsonScoreInterval().createInterval(all, of, LEVEL);
    return String.format(Locale.ROOT, "%d of %d = %.1f %% (%.1f to %.1f)", of, all, 100.0 * of / all,
        100 * wilson.getLowerBound(), 100 * wilson.getUpperBound());
  }

  // Ways to judge one written word, each with a limit; what sounds or looks near is read.

  private record Way(String name, double[] limits, Judge judge) {}

  private interface Judge {
    /** 0 for the same word, larger for farther. */
    double off(String written, String word);
  }

  private static void compareWays(List<Misspelling> chosenOn, List<Misspelling> measuredOn) {
    LevenshteinDistance edits = LevenshteinDistance.getDefaultInstance();
    JaroWinklerSimilarity jaro = new JaroWinklerSimilarity();
    double[] shares = {0.1, 0.15, 0.18, 0.2, 0.22, 0.24, 0.26, 0.28, 0.3, 0.34, 0.4, 0.5};
    List<Way> ways = new ArrayList<>();
    ways.add(new Way("edits a letter", shares, (w, r) -> (double) edits.apply(w, r) / r.length()));
    ways.add(new Way("Jaro-Winkler", shares, (w, r) -> 1 - jaro.apply(w, r)));
    Map<String, StringEncoder> codes = new TreeMap<>(Map.of("Metaphone", new Metaphone(), "Double Metaphone",
        new DoubleMetaphone(), "Refined Soundex", new RefinedSoundex(), "Caverphone 2", new Caverphone2(), "NYSIIS",
        new Nysiis(), "Match Rating", new MatchRatingApproachEncoder()));
    codes.forEach((name, code) -> {
      ways.add(new Way(name + " alone", new double[] {0}, (w, r) -> code(code, w).equals(code(code, r)) ? 0 : 1));
      ways.add(new Way(name + ", or edits a letter", shares,
          (w, r) -> code(code, w).equals(code(code, r)) ? 0 : (double) edits.apply(w, r) / r.length()));
      ways.add(new Way(name + " edits a code letter", shares,
          (w, r) -> (double) edits.apply(code(code, w), code(code, r)) / Math.max(1, code(code, r).length())));
    });
    ways.add(new Way("weighted letters", shares, (w, r) -> Spelling.byLetters(w, r) / r.length()));
    ways.add(new Way("weighted letters and sound", shares, (w, r) -> Spelling.off(w, r) / r.length()));

    System.out.printf("%n%-38s %6s  %-28s %-22s%n", "way (limit with the best margin)", "limit",
        "chosen on: read / wrongly",
        "held back: read / wrongly");
    for (Way way : ways) {
      double best = Double.NEGATIVE_INFINITY;
      double limit = 0;
      for (double each : way.limits()) {
        double margin = read(chosenOn, way, each) - 5 * wronglyRead(chosenOn, way, each);
        if (margin > best) {
          best = margin;
          limit = each;
        }
      }
      System.out.printf(Locale.ROOT, "%-38s %6.2f  %6.1f %% / %5.2f %%           %6.1f %% / %5.2f %%%n", way.name(),
          limit,
          100 * read(chosenOn, way, limit), 100 * wronglyRead(chosenOn, way, limit),
          100 * read(measuredOn, way, limit), 100 * wronglyRead(measuredOn, way, limit));
    }
    System.out.println("read: the misspelling as its own noun; wrongly: as any other noun of the same set."
        + " Limits by the chosen-on set: read - 5 x wrongly is largest.");
  }

  private static String code(StringEncoder encoder, String word) {
    try {
      return encoder.encode(word);
    } catch (EncoderException e) {
      throw new IllegalStateException(word, e);
    }
  }

  private static double read(List<Misspelling> some, Way way, double limit) {
    return shareOf(some, (each, noun) -> each.noun().equals(noun.noun()) && each.correct().equals(noun.correct()),
        way, limit);
  }

  private static double wronglyRead(List<Misspelling> some, Way way, double limit) {
    return shareOf(some, (each, noun) -> !each.noun().equals(noun.noun()), way, limit);
  }

  private static double shareOf(List<Misspelling> some, BiPredicate<Misspelling, Misspelling> pairs, Way way,
      double limit) {
    int all = 0;
    int near = 0;
    List<Misspelling> nouns = new ArrayList<>(
        some.stream().collect(java.util.stream.Collectors.toMap(Misspelling::correct, m -> m, (a, b) -> a)).values());
    for (Misspelling each : some) {
      String written = each.written().replace(" ", "");
      if (CommonWords.contains(written)) {
        continue;
      }
      for (Misspelling noun : nouns) {
        if (pairs.test(each, noun)) {
          all++;
          near += way.judge().off(written, noun.correct()) <= limit ? 1 : 0;
        }
      }
    }
    return (double) near / Math.max(1, all);
  }
}
