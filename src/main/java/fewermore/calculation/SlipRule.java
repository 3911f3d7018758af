package fewermore.calculation;

import fewermore.story.Operation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One classic slip of two-digit calculation, as an exact rule that predicts one wrong number.
 *
 * <p>Digits are written {@code first = 10·t1 + o1} and {@code second = 10·t2 + o2}; {@code right} is the true
 * result. In a subtraction {@code first} is the larger number, whichever way round it was written. Rules
 * speak of numbers from 0 to {@value #LARGEST}; 100 counts as ten tens.
 *
 * <p>Several rules may predict the same number, and some always do ({@link #BORROW_TENS_LEFT} and
 * {@link #TEN_TOO_FEW_TAKEN}, say): an answer alone can't tell them apart, so all are reported. One wrong
 * answer is a hint; a slip is named only when it repeats (Brown &amp; Burton 1978; VanLehn 1990 on stable bugs
 * and passing slips).
 *
 * <p>Sources name the error; definitions as formulas and every number in the examples were worked out for this
 * project. "From memory" marks a source that was not read again.
 */
public enum SlipRule {
  /** Takes the smaller digit from the larger in each place: {@code 10·|t1−t2| + |o1−o2|}, where o1 &lt; o2. */
  SMALLER_FROM_LARGER("S1", "smaller-from-larger", "took the smaller digit from the larger in each place",
      62, Operation.SUBTRACT, 28, 46, Source.CATALOG) {
    @Override OptionalInt wrong(Digits d) {
      return d.borrows() ? one(10 * Math.abs(d.t1 - d.t2) + Math.abs(d.o1 - d.o2)) : none();
    }
  },
  /** Borrows ten for the ones but leaves the tens as they were: {@code right + 10}, where o1 &lt; o2. */
  BORROW_TENS_LEFT("S2", "borrow-tens-left", "borrowed a ten but left the tens as they were",
      62, Operation.SUBTRACT, 28, 44, Source.CATALOG) {
    @Override OptionalInt wrong(Digits d) {
      return d.borrows() ? one(d.right() + 10) : none();
    }
  },
  /** Takes a ten off the tens but never adds it to the ones: {@code 10·(t1−1−t2) + |o1−o2|}, where o1 &lt; o2. */
  TRADED_TEN_NOT_ADDED("S3", "traded-ten-not-added",
      "took a ten from the tens but did not add it to the ones, and took the smaller ones digit from the larger",
      62, Operation.SUBTRACT, 28, 36, Source.CATALOG_MEDIUM) {
    @Override OptionalInt wrong(Digits d) {
      return d.borrows() ? one(10 * (d.t1 - 1 - d.t2) + Math.abs(d.o1 - d.o2)) : none();
    }
  },
  /** Writes 0 where a ten should be borrowed: {@code 10·(t1−t2)}, where o1 &lt; o2. */
  ZERO_FOR_BORROW("S4", "zero-for-borrow", "wrote 0 ones where a ten should be traded",
      62, Operation.SUBTRACT, 28, 40, Source.CATALOG) {
    @Override OptionalInt wrong(Digits d) {
      return d.borrows() ? one(10 * (d.t1 - d.t2)) : none();
    }
  },
  /** Borrows once but takes two tens off: {@code right − 10}, where o1 &lt; o2 and t1−2 ≥ t2. */
  BORROWED_TWICE("S5", "borrowed-twice", "took two tens off the tens for one trade",
      62, Operation.SUBTRACT, 28, 24, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return d.borrows() && d.t1 - 2 >= d.t2 ? one(d.right() - 10) : none();
    }
  },
  /** Takes 0 − N for N: {@code 10·(t1−t2) + o2}, where o1 = 0 &lt; o2. */
  ZERO_LESS_N_IS_N("S6", "zero-less-n-is-n", "took 0 less a digit as that digit",
      70, Operation.SUBTRACT, 34, 44, Source.CATALOG) {
    @Override OptionalInt wrong(Digits d) {
      return d.o1 == 0 && d.o2 > 0 ? one(10 * (d.t1 - d.t2) + d.o2) : none();
    }
  },
  /** Takes 0 − N for 0: {@code 10·(t1−t2)}, where o1 = 0 &lt; o2. */
  ZERO_LESS_N_IS_ZERO("S7", "zero-less-n-is-zero", "took 0 less a digit as 0",
      70, Operation.SUBTRACT, 34, 40, Source.CATALOG) {
    @Override OptionalInt wrong(Digits d) {
      return d.o1 == 0 && d.o2 > 0 ? one(10 * (d.t1 - d.t2)) : none();
    }
  },
  /** Takes N − 0 for 0: {@code 10·(t1−t2)}, where o2 = 0 &lt; o1. */
  N_LESS_ZERO_IS_ZERO("S8", "n-less-zero-is-zero", "took a digit less 0 as 0",
      57, Operation.SUBTRACT, 20, 30, Source.CATALOG) {
    @Override OptionalInt wrong(Digits d) {
      return d.o2 == 0 && d.o1 > 0 ? one(10 * (d.t1 - d.t2)) : none();
    }
  },
  /** Takes a ten off though none is needed: {@code right − 10}, where o1 ≥ o2 and t1−1 ≥ t2. */
  BORROWED_WITHOUT_NEED("S9", "borrowed-without-need", "took a ten off though no trade was needed",
      57, Operation.SUBTRACT, 23, 24, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return d.o1 >= d.o2 && d.t1 - 1 >= d.t2 ? one(d.right() - 10) : none();
    }
  },
  /**
   * Takes a one-digit number from both places: {@code 10·|t1−second| + (o1−second)}, where
   * second &lt; 10 ≤ first, o1 ≥ second.
   */
  TAKEN_FROM_BOTH_PLACES("S10", "taken-from-both-places", "took the one-digit number from the tens too",
      47, Operation.SUBTRACT, 3, 14, Source.CATALOG) {
    @Override OptionalInt wrong(Digits d) {
      return d.second < 10 && d.first >= 10 && d.o1 >= d.second
          ? one(10 * Math.abs(d.t1 - d.second) + d.o1 - d.second) : none();
    }
  },
  /** Stops where the one-digit number ends: {@code o1 − second}, where second &lt; 10 ≤ first, o1 ≥ second. */
  STOPPED_AT_THE_BLANK("S11", "stopped-at-the-blank", "stopped after the ones and left the tens out",
      47, Operation.SUBTRACT, 3, 4, Source.CATALOG) {
    @Override OptionalInt wrong(Digits d) {
      return d.second < 10 && d.first >= 10 && d.o1 >= d.second ? one(d.o1 - d.second) : none();
    }
  },
  /** Takes only the tens away: {@code first − 10·t2}, where t2, o2 &gt; 0. */
  TENS_ONLY("S12", "tens-only", "took away only the tens",
      62, Operation.SUBTRACT, 28, 42, Source.MENTAL) {
    @Override OptionalInt wrong(Digits d) {
      return d.t2 > 0 && d.o2 > 0 ? one(d.first - 10 * d.t2) : none();
    }
  },
  /** Takes only the ones away: {@code first − o2}, where t2, o2 &gt; 0. */
  ONES_ONLY("S13", "ones-only", "took away only the ones",
      62, Operation.SUBTRACT, 28, 54, Source.MENTAL) {
    @Override OptionalInt wrong(Digits d) {
      return d.t2 > 0 && d.o2 > 0 ? one(d.first - d.o2) : none();
    }
  },
  /** Takes a rounded ten, then mends it the wrong way: {@code right − 2·(10−o2)}, where o2 &gt; 0. */
  MENDED_THE_WRONG_WAY("S14", "mended-the-wrong-way", "took a rounded ten away and then mended it the wrong way",
      62, Operation.SUBTRACT, 28, 30, Source.MENTAL) {
    @Override OptionalInt wrong(Digits d) {
      return d.o2 > 0 ? one(d.right() - 2 * (10 - d.o2)) : none();
    }
  },
  /** Says the starting number when counting back: {@code right + 1}. */
  COUNTED_THE_START_BACK("S15", "counted-the-start-back", "counted the starting number when counting back",
      34, Operation.SUBTRACT, 5, 30, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return one(d.right() + 1);
    }
  },
  /** Finds a difference by counting both ends: {@code right + 1}. */
  COUNTED_BOTH_ENDS("S16", "counted-both-ends", "counted both ends of the gap",
      52, Operation.SUBTRACT, 45, 8, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return one(d.right() + 1);
    }
  },
  /** Finds a difference by counting neither end: {@code right − 1}. */
  COUNTED_NEITHER_END("S16", "counted-neither-end", "counted neither end of the gap",
      52, Operation.SUBTRACT, 45, 6, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return one(d.right() - 1);
    }
  },
  /** One jump of ten too few: {@code right + 10}. */
  TEN_TOO_FEW_TAKEN("S17", "ten-too-few-taken", "took one ten too few",
      62, Operation.SUBTRACT, 28, 44, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return one(d.right() + 10);
    }
  },
  /** One jump of ten too many: {@code right − 10}. */
  TEN_TOO_MANY_TAKEN("S17", "ten-too-many-taken", "took one ten too many",
      62, Operation.SUBTRACT, 28, 24, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return one(d.right() - 10);
    }
  },
  /** Writes the digits of the difference in the wrong order, where it has two. */
  DIFFERENCE_DIGITS_SWAPPED("S18", "difference-digits-swapped", "swapped the digits of the result",
      62, Operation.SUBTRACT, 28, 43, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return d.right() >= 10 ? one(reversed(d.right())) : none();
    }
  },
  /** Adds instead: {@code first + second}. */
  ADDED_INSTEAD("S19", "added-instead", "added instead of taking away",
      62, Operation.SUBTRACT, 28, 90, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return one(d.first + d.second);
    }
  },
  /** Drops the ten made by the ones: {@code right − 10}, where o1+o2 ≥ 10. */
  CARRIED_TEN_DROPPED("A1", "carried-ten-dropped", "dropped the ten that the ones make",
      34, Operation.ADD, 28, 52, Source.COLUMN) {
    @Override OptionalInt wrong(Digits d) {
      return d.carries() ? one(d.right() - 10) : none();
    }
  },
  /**
   * Writes both column sums side by side: the digits of {@code t1+t2}, then of {@code o1+o2},
   * where o1+o2 ≥ 10.
   */
  BOTH_DIGITS_WRITTEN("A2", "both-digits-written", "wrote both sums side by side",
      34, Operation.ADD, 28, 512, Source.COLUMN) {
    @Override OptionalInt wrong(Digits d) {
      return d.carries() ? one(100 * (d.t1 + d.t2) + d.o1 + d.o2) : none();
    }
  },
  /**
   * Writes the ten and carries the ones: with {@code w = o1+o2 ≥ 10},
   * {@code 10·(t1+t2+w mod 10) + ⌊w/10⌋}.
   */
  TEN_AND_ONES_EXCHANGED("A3", "ten-and-ones-exchanged", "wrote the ten in the ones place and carried the ones",
      34, Operation.ADD, 28, 71, Source.COLUMN) {
    @Override OptionalInt wrong(Digits d) {
      int w = d.o1 + d.o2;
      return d.carries() ? one(10 * (d.t1 + d.t2 + w % 10) + w / 10) : none();
    }
  },
  /** Carries a ten that is not there: {@code right + 10}, where o1+o2 &lt; 10. */
  CARRIED_WITHOUT_NEED("A4", "carried-without-need", "added a ten though the ones make none",
      32, Operation.ADD, 25, 67, Source.COLUMN) {
    @Override OptionalInt wrong(Digits d) {
      return d.carries() ? none() : one(d.right() + 10);
    }
  },
  /** Adds all digits as ones: {@code t1+o1+t2+o2}. */
  ALL_DIGITS_AS_ONES("A5", "all-digits-as-ones", "added all the digits as ones",
      34, Operation.ADD, 28, 17, Source.COLUMN) {
    @Override OptionalInt wrong(Digits d) {
      return one(d.t1 + d.o1 + d.t2 + d.o2);
    }
  },
  /** Adds the ones of a one-digit number to the tens: {@code 10·(t+b) + o}, the other number being 10 or more. */
  ONES_ADDED_TO_TENS("A6", "ones-added-to-tens", "added ones to the tens place",
      47, Operation.ADD, 6, 107, Source.COLUMN) {
    @Override OptionalInt wrong(Digits d) {
      return d.oneIsOneDigit() ? one(10 * (d.long10() + d.shortOnes()) + d.longOnes()) : none();
    }
  },
  /**
   * Adds a one-digit number to both places, carrying: with {@code c = ⌊(o+b)/10⌋},
   * {@code 10·(t+b+c) + (o+b) mod 10}, the other number being 10 or more.
   */
  ADDED_TO_BOTH_PLACES("A7", "added-to-both-places", "added the one-digit number to the tens too",
      47, Operation.ADD, 6, 113, Source.COLUMN) {
    @Override OptionalInt wrong(Digits d) {
      int ones = d.longOnes() + d.shortOnes();
      return d.oneIsOneDigit() ? one(10 * (d.long10() + d.shortOnes() + ones / 10) + ones % 10) : none();
    }
  },
  /** Rounds the first number up, then adds what should come off: {@code right + 2·(10−o1)}, where o1 &gt; 0. */
  FIRST_MENDED_THE_WRONG_WAY("A8", "first-mended-the-wrong-way",
      "rounded the first number up and then mended it the wrong way",
      34, Operation.ADD, 28, 74, Source.MENTAL) {
    @Override OptionalInt wrong(Digits d) {
      return d.o1 > 0 ? one(d.right() + 2 * (10 - d.o1)) : none();
    }
  },
  /**
   * The same with the second number, since addends may be taken in either order: {@code right + 2·(10−o2)},
   * where o2 &gt; 0 (ours, by symmetry).
   */
  SECOND_MENDED_THE_WRONG_WAY("A8", "second-mended-the-wrong-way",
      "rounded the second number up and then mended it the wrong way",
      34, Operation.ADD, 28, 66, Source.MENTAL) {
    @Override OptionalInt wrong(Digits d) {
      return d.o2 > 0 ? one(d.right() + 2 * (10 - d.o2)) : none();
    }
  },
  /** Says the starting number when counting on: {@code right − 1}. */
  COUNTED_THE_START_ON("A9", "counted-the-start-on", "counted the starting number when counting on",
      28, Operation.ADD, 5, 32, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return one(d.right() - 1);
    }
  },
  /** One jump of ten too many: {@code right + 10}. */
  TEN_TOO_MANY_ADDED("A10", "ten-too-many-added", "added one ten too many",
      34, Operation.ADD, 28, 72, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return one(d.right() + 10);
    }
  },
  /** One jump of ten too few: {@code right − 10}. */
  TEN_TOO_FEW_ADDED("A10", "ten-too-few-added", "added one ten too few",
      34, Operation.ADD, 28, 52, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return one(d.right() - 10);
    }
  },
  /** Writes the digits of the sum in the wrong order, where it has two or more. */
  SUM_DIGITS_SWAPPED("A11", "sum-digits-swapped", "swapped the digits of the result",
      34, Operation.ADD, 28, 26, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return d.right() >= 10 ? one(reversed(d.right())) : none();
    }
  },
  /** Takes away instead: {@code |first − second|}. */
  SUBTRACTED_INSTEAD("A12", "subtracted-instead", "took away instead of adding",
      34, Operation.ADD, 28, 6, Source.COMPUTED) {
    @Override OptionalInt wrong(Digits d) {
      return one(Math.abs(d.first - d.second));
    }
  };

  /** The largest number of a calculation that the rules speak of. */
  public static final int LARGEST = 100;

  private final String catalog;
  private final String id;
  private final String says;
  private final Example example;
  private final String source;

  SlipRule(String catalog, String id, String says, int first, Operation op, int second, int writes, String source) {
    this.catalog = catalog;
    this.id = id;
    this.says = says;
    this.example = new Example(first, op, second, writes);
    this.source = source;
  }

  /** A worked example of a rule: {@code first op second}, for which a child who slips so writes {@code writes}. */
  public record Example(int first, Operation operation, int second, int writes) {}

  /** The word used in JSON, in the store and in CSV files. */
  public String id() {
    return id;
  }

  /** The rule's number in this project's list: S for subtraction, A for addition; two directions share one. */
  public String catalog() {
    return catalog;
  }

  /** What the child may have done, in the past tense, to stand after "the child": for the teacher. */
  public String says() {
    return says;
  }

  public Example example() {
    return example;
  }

  /** The operation the rule belongs to. */
  public Operation operation() {
    return example.operation();
  }

  /** Who described the error; numbers and formulas are this project's own. */
  public String source() {
    return source;
  }

  public static Optional<SlipRule> of(String id) {
    for (SlipRule rule : values()) {
      if (rule.id.equals(id)) {
        return Optional.of(rule);
      }
    }
    return Optional.empty();
  }

  /**
   * Every rule by which {@code first op second} comes out as {@code written}, in the order of the list; none
   * when {@code written} is right or a number lies outside 0 to {@value #LARGEST}. A subtraction is read
   * larger first.
   */
  public static List<SlipRule> predicting(int first, Operation op, int second, int written) {
    List<SlipRule> found = new ArrayList<>();
    for (SlipRule rule : values()) {
      OptionalInt predicted = rule.predicts(first, op, second);
      if (predicted.isPresent() && predicted.getAsInt() == written) {
        found.add(rule);
      }
    }
    return List.copyOf(found);
  }

  /**
   * The wrong number this rule makes of {@code first op second}; empty when the rule does not apply, when it
   * would give the right result after all, and for a subtraction of equal numbers.
   */
  public OptionalInt predicts(int first, Operation op, int second) {
    boolean outside = Math.min(first, second) < 0 || Math.max(first, second) > LARGEST;
    if (op != operation() || outside || op == Operation.SUBTRACT && first == second) {
      return OptionalInt.empty();
    }
    Digits digits = op == Operation.SUBTRACT && first < second
        ? new Digits(second, op, first) : new Digits(first, op, second);
    OptionalInt wrong = wrong(digits);
    return wrong.isPresent() && (wrong.getAsInt() == digits.right() || wrong.getAsInt() < 0)
        ? OptionalInt.empty() : wrong;
  }

  abstract OptionalInt wrong(Digits digits);

  private static OptionalInt one(int wrong) {
    return OptionalInt.of(wrong);
  }

  private static OptionalInt none() {
    return OptionalInt.empty();
  }

  private static int reversed(int number) {
    return Integer.parseInt(new StringBuilder().append(number).reverse().toString());
  }

  /** The two numbers of a calculation by tens and ones. */
  private static final class Digits {
    final int first;
    final int second;
    final int t1;
    final int o1;
    final int t2;
    final int o2;
    private final Operation op;

    Digits(int first, Operation op, int second) {
      this.first = first;
      this.second = second;
      this.op = op;
      this.t1 = first / 10;
      this.o1 = first % 10;
      this.t2 = second / 10;
      this.o2 = second % 10;
    }

    int right() {
      return op == Operation.ADD ? first + second : first - second;
    }

    boolean borrows() {
      return o1 < o2;
    }

    boolean carries() {
      return o1 + o2 >= 10;
    }

    boolean oneIsOneDigit() {
      return Math.min(first, second) < 10 && Math.max(first, second) >= 10;
    }

    int long10() {
      return Math.max(first, second) / 10;
    }

    int longOnes() {
      return Math.max(first, second) % 10;
    }

    int shortOnes() {
      return Math.min(first, second);
    }
  }

  private static final class Source {
    static final String OURS = "; formula and numbers computed for this project";
    static final String CATALOG = "named in VanLehn (1990), Mind Bugs, after Brown & Burton (1978), "
        + "Cognitive Science 2:155-192 (from memory)" + OURS;
    static final String CATALOG_MEDIUM =
        "near to one named in VanLehn (1990), Mind Bugs (from memory, not sure)" + OURS;
    static final String MENTAL =
        "of the kind reported for split and jump methods by Beishuizen (1993), J. Research in Mathematics Education 24 "
            + "(from memory, not sure)" + OURS;
    static final String COLUMN =
        "common in column addition (common practice, no source)" + OURS;
    static final String COMPUTED = "common practice, no source" + OURS;

    private Source() {}
  }
}
