package fewermore.records;

import fewermore.calculation.SlipRule;
import fewermore.classroom.Child;
import fewermore.classroom.HandIn;
import fewermore.classroom.PieceOfWork;
import fewermore.marking.AnswerVerdict;
import fewermore.marking.BarsVerdict;
import fewermore.marking.LabelVerdict;
import fewermore.marking.Marks;
import fewermore.marking.Part;
import fewermore.story.Wording;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * What the page for a family says of one child: at least one strength from her own work (else what she tried and kept
 * at), one next step, one thing to try at home, and how it went month by month. It names no way of reasoning, makes no
 * comparison with other children, and speaks of a slip in calculation only when it was seen at least
 * {@value #SLIP_SEEN} times. Work done with help is not read. The teacher may change every sentence.
 *
 * @param own the child's own work that stands on the page, or null where nothing in it is as it should be
 * @param months those with at least {@value #FEWEST_IN_A_MONTH} stories, oldest first, at most {@value #MOST_MONTHS}
 * @param sentences by place; an empty text for a place that is left out
 */
public record Conference(
    Child child, String language, Own own, List<Month> months, Map<Place, String> sentences) {
  /** A month with fewer stories is not drawn: too few to say anything. Ours. */
  public static final int FEWEST_IN_A_MONTH = 4;
  public static final int MOST_MONTHS = 5;
  /** A slip is named only when it repeats: stable bugs and passing slips, Brown and Burton 1978, VanLehn 1990. */
  public static final int SLIP_SEEN = 2;
  /** Work older than this many days says nothing of the next step. Ours. */
  private static final int RECENT_DAYS = 42;

  /** Where a sentence stands on the page. */
  public enum Place {
    LEAD, SHOWS, CAPTION, SINCE, NEXT, HOME, CLOSING;

    /**
     * Longest sentence the teacher may write here, in characters: with all of them as long as that the page stays one
     * page, on Letter and on A4.
     */
    public int longest() {
      return this == SHOWS || this == NEXT || this == HOME ? 220 : 140;
    }

    /** The name in a form and in the store. */
    public String id() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /** One piece of her own work. @param good the parts that are as they should be, in the order of the page */
  public record Own(PieceOfWork piece, HandIn attempt, Set<Part> good, boolean lookedAgain) {}

  /** @param fits stories whose first equation says what the story says, of {@code of} */
  public record Month(String name, int fits, int of) {}

  private enum Next { WHO_HAS_MORE, TRADE, CHECK, LABEL, BARS, FURTHER, MORE }

  public Conference {
    months = List.copyOf(months);
    sentences = Map.copyOf(sentences);
  }

  /**
   * @param work all work of the child
   * @param chosen problems whose work the teacher chose for this page, the one she wants first
   * @param language {@code en} or {@code es}
   */
  public static Conference of(
      Child child, Collection<PieceOfWork> work, List<Long> chosen, LocalDate today, String language) {
    FamilyTexts texts = FamilyTexts.in(language);
    List<PieceOfWork> read = work.stream().filter(piece -> !piece.withHelp())
        .sorted(Comparator.comparing((PieceOfWork piece) -> piece.evidence().at()).reversed()).toList();
    List<PieceOfWork> recent = read.stream()
        .filter(piece -> piece.evidence().day().isAfter(today.minusDays(RECENT_DAYS))).toList();
    Own own = own(read, chosen);
    List<Month> months = months(read, texts);
    Map<Place, String> sentences = new EnumMap<>(Place.class);
    sentences.put(Place.LEAD, lead(child.name(), recent, texts));
    sentences.put(Place.SHOWS, shows(child.name(), own, read, texts));
    sentences.put(Place.CAPTION, own == null ? "" : caption(child.name(), own, texts));
    sentences.put(Place.SINCE, months.isEmpty() ? "" : texts.of("since.says", child.name()));
    Next next = next(recent);
    sentences.put(Place.NEXT, read.isEmpty() ? texts.of("next.none", child.name())
        : texts.of("next." + id(next), child.name()));
    sentences.put(Place.HOME, texts.of("home." + id(next), child.name()));
    sentences.put(Place.CLOSING, texts.of("closing"));
    return new Conference(child, language, own, months, sentences);
  }

  private static String id(Next next) {
    return next.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  // ---- her own work ----

  private static final Map<Part, Predicate<Marks>> GOOD = new LinkedHashMap<>();

  static {
    GOOD.put(Part.BARS, marks -> marks.bars() == BarsVerdict.FITS);
    GOOD.put(Part.EQUATION, marks -> marks.equation() != null && marks.equation().fits());
    GOOD.put(Part.ANSWER, marks -> marks.answer() != null && marks.answer().verdict() == AnswerVerdict.RIGHT);
    GOOD.put(Part.LABEL, marks -> marks.label() == LabelVerdict.NAMES_IT);
  }

  private static Set<Part> good(Marks marks) {
    Set<Part> good = EnumSet.noneOf(Part.class);
    GOOD.forEach((part, test) -> {
      if (test.test(marks)) {
        good.add(part);
      }
    });
    return good;
  }

  /** What the teacher chose; else the work of which most is as it should be, the equation before all, the latest first. */
  private static Own own(List<PieceOfWork> read, List<Long> chosen) {
    for (long problem : chosen) {
      for (PieceOfWork piece : read) {
        Own own = piece.problem().id() == problem ? best(piece) : null;
        if (own != null) {
          return own;
        }
      }
    }
    return read.stream().map(Conference::best).filter(own -> own != null)
        .max(Comparator.comparing(Conference::weight)
            .thenComparing((Own own) -> own.attempt().at())).orElse(null);
  }

  /** The first try where any of it is as it should be, else the last. */
  private static Own best(PieceOfWork piece) {
    Set<Part> first = good(piece.evidence().marks());
    Set<Part> last = good(piece.last().marks());
    if (first.contains(Part.EQUATION) || last.size() <= first.size()) {
      return first.isEmpty() ? null : new Own(piece, piece.evidence(), first, false);
    }
    return new Own(piece, piece.last(), last, true);
  }

  private static int weight(Own own) {
    int weight = own.lookedAgain ? 0 : 1;
    if (own.good.contains(Part.EQUATION)) {
      weight += own.piece.problem().kind().agrees() ? 8 : 12;
    }
    return weight + (own.good.contains(Part.BARS) ? 4 : 0) + (own.good.contains(Part.ANSWER) ? 2 : 0)
        + (own.good.contains(Part.LABEL) ? 2 : 0);
  }

  // ---- sentences ----

  /** A count from her own work where it is a strength; else what this is about, which is true of every child. */
  private static String lead(String name, List<PieceOfWork> recent, FamilyTexts texts) {
    List<Marks> equations = recent.stream().map(piece -> piece.evidence().marks())
        .filter(marks -> marks.equation() != null).toList();
    long fits = equations.stream().filter(marks -> marks.equation().fits()).count();
    if (equations.size() >= FEWEST_IN_A_MONTH && fits * 2 >= equations.size()) {
      return texts.of("lead.equation", name, fits, equations.size());
    }
    List<Marks> bars = recent.stream().map(piece -> piece.evidence().marks())
        .filter(marks -> marks.bars() != null).toList();
    long drawn = bars.stream().filter(GOOD.get(Part.BARS)).count();
    return bars.size() >= FEWEST_IN_A_MONTH && drawn * 2 >= bars.size()
        ? texts.of("lead.bars", name, drawn, bars.size()) : texts.of("lead.learning", name);
  }

  private static String shows(String name, Own own, List<PieceOfWork> read, FamilyTexts texts) {
    if (own == null) {
      long again = read.stream().filter(piece -> piece.tries() > 1).count();
      return read.isEmpty() ? texts.of("shows.none", name)
          : again == 0 ? texts.of("shows.tried", name, read.size())
          : texts.of("shows.kept-at", name, read.size(), again);
    }
    List<String> did = own.good.stream().map(part -> texts.of("did." + part.id())).toList();
    String list = did.size() == 1 ? did.get(0)
        : String.join(", ", did.subList(0, did.size() - 1)) + texts.of("did.and") + did.get(did.size() - 1);
    return texts.of(own.lookedAgain ? "shows.again" : "shows.own", name, list);
  }

  private static String caption(String name, Own own, FamilyTexts texts) {
    String day = DateTimeFormatter.ofLocalizedDate(FormatStyle.FULL).withLocale(texts.locale())
        .format(own.attempt.day());
    boolean against = own.good.contains(Part.EQUATION) && !own.piece.problem().kind().agrees();
    if (!against) {
      return texts.of("caption.own", name, day);
    }
    String word = word(own, texts);
    return texts.of("caption.own", name, day) + " "
        + (word.isEmpty() ? texts.of("caption.apart", name) : texts.of("caption.word", name, word));
  }

  /** The comparing word as it stands in the story; empty where the story says it otherwise. */
  private static String word(Own own, FamilyTexts texts) {
    Wording wording = own.piece.problem().kind().wording();
    String story = " " + String.join(" ", own.piece.problem().sentences(texts.locale().getLanguage())) + " ";
    return Stream.of(texts.of("words." + wording.id()).split(" "))
        .filter(word -> story.toLowerCase(texts.locale()).matches("(?s).*[^\\p{L}]" + word + "[^\\p{L}].*"))
        .findFirst().orElse("");
  }

  // ---- the next step ----

  private static Next next(List<PieceOfWork> recent) {
    List<Marks> telling = recent.stream().filter(piece -> !piece.problem().kind().agrees())
        .map(piece -> piece.evidence().marks()).filter(marks -> marks.equation() != null).toList();
    long missed = telling.stream().filter(marks -> !marks.equation().fits()).count();
    if (missed >= 2 && missed * 2 >= telling.size()) {
      return Next.WHO_HAS_MORE;
    }
    Map<SlipRule, Integer> slips = new EnumMap<>(SlipRule.class);
    recent.forEach(piece -> {
      if (piece.evidence().marks().answer() != null) {
        piece.evidence().marks().answer().slips().forEach(slip -> slips.merge(slip, 1, Integer::sum));
      }
    });
    List<SlipRule> repeated = slips.entrySet().stream().filter(entry -> entry.getValue() >= SLIP_SEEN)
        .filter(entry -> !NO_SLIP.contains(entry.getKey())).map(Map.Entry::getKey).toList();
    if (!repeated.isEmpty()) {
      return repeated.stream().anyMatch(ABOUT_TRADING::contains) ? Next.TRADE : Next.CHECK;
    }
    if (missedOften(recent, marks -> marks.label() != null, GOOD.get(Part.LABEL))) {
      return Next.LABEL;
    }
    if (missedOften(recent, marks -> marks.bars() != null, GOOD.get(Part.BARS))) {
      return Next.BARS;
    }
    return further(recent) ? Next.FURTHER : Next.MORE;
  }

  /** Stories for others are for a child of whose equations most say what the story says, in more than a few stories. */
  private static boolean further(List<PieceOfWork> recent) {
    List<Marks> equations = recent.stream().map(piece -> piece.evidence().marks())
        .filter(marks -> marks.equation() != null).toList();
    return equations.size() >= FEWEST_IN_A_MONTH
        && equations.stream().filter(GOOD.get(Part.EQUATION)).count() * 2 > equations.size();
  }

  /** Slips that are made where a ten is traded. */
  private static final Set<SlipRule> ABOUT_TRADING = EnumSet.of(SlipRule.SMALLER_FROM_LARGER, SlipRule.BORROW_TENS_LEFT,
      SlipRule.TRADED_TEN_NOT_ADDED, SlipRule.ZERO_FOR_BORROW, SlipRule.BORROWED_TWICE, SlipRule.BORROWED_WITHOUT_NEED,
      SlipRule.CARRIED_TEN_DROPPED, SlipRule.BOTH_DIGITS_WRITTEN, SlipRule.TEN_AND_ONES_EXCHANGED,
      SlipRule.CARRIED_WITHOUT_NEED);
  /** The other operation is no slip of calculation. */
  private static final Set<SlipRule> NO_SLIP = EnumSet.of(SlipRule.ADDED_INSTEAD, SlipRule.SUBTRACTED_INSTEAD);

  private static boolean missedOften(List<PieceOfWork> recent, Predicate<Marks> asked, Predicate<Marks> good) {
    List<Marks> marks = recent.stream().map(piece -> piece.evidence().marks()).filter(asked).toList();
    long missed = marks.stream().filter(good.negate()).count();
    return missed >= 2 && missed * 3 >= marks.size();
  }

  // ---- months ----

  private static List<Month> months(Collection<PieceOfWork> read, FamilyTexts texts) {
    TreeMap<YearMonth, List<Marks>> byMonth = new TreeMap<>();
    for (PieceOfWork piece : read) {
      if (piece.evidence().marks().equation() != null) {
        byMonth.computeIfAbsent(YearMonth.from(piece.evidence().day()), none -> new ArrayList<>())
            .add(piece.evidence().marks());
      }
    }
    List<Month> months = new ArrayList<>();
    byMonth.forEach((month, marks) -> {
      if (marks.size() >= FEWEST_IN_A_MONTH) {
        months.add(new Month(month.getMonth().getDisplayName(TextStyle.FULL_STANDALONE, texts.locale()),
            (int) marks.stream().filter(GOOD.get(Part.EQUATION)).count(), marks.size()));
      }
    });
    return months.subList(Math.max(0, months.size() - MOST_MONTHS), months.size());
  }

  /** The app's sentence at a place; empty where there is none. */
  public String sentence(Place place) {
    return sentences.getOrDefault(place, "");
  }
}
