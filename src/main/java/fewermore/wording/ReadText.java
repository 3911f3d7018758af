package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Thing;
import fewermore.text.SourceSpan;
import java.util.List;

/**
 * What came of reading a problem's text: the story it tells, with the place of each part, or the reason why it was
 * not taken. Either way a {@link Correction} leads on: the teacher's own roles, checked.
 */
public sealed interface ReadText {

  /** One answer for each case, so that a new case can't be forgotten. */
  interface Cases<T> {
    T understood(Understood read);

    T declined(Declined read);
  }

  <T> T match(Cases<T> cases);

  /** The text as it was typed; every place below counts its {@code char}s. */
  String text();

  /** Every number of the text in reading order, whatever it stands for. */
  List<NumberInText> numbers();

  /** Who or what may have an amount, as the text names them and in the order they come. */
  List<String> holders();

  /** What may be counted, in the order it comes. */
  List<NounInText> nouns();

  /**
   * A number of the text.
   *
   * @param value whole, 0 or more
   * @param at its digits or words, with a money sign
   */
  record NumberInText(int value, SourceSpan at) {}

  /** A thing of the text, one and many, and where it first stands. */
  record NounInText(Thing thing, SourceSpan at) {}

  /** A part of the story and one place of the text that says it. A part may have several places. */
  record Place(Part part, SourceSpan at) {}

  /** What a place of the text says. */
  enum Part {
    LARGER_HOLDER("larger-holder"),
    SMALLER_HOLDER("smaller-holder"),
    LARGER("larger"),
    SMALLER("smaller"),
    DIFFERENCE("difference"),
    EXTRA("extra"),
    /** The sentence that asks. */
    QUESTION("question"),
    THING("thing"),
    OTHER_THING("other-thing"),
    /** "fewer", "longer", "difference". */
    COMPARING_WORD("comparing-word");

    private final String id;

    Part(String id) {
      this.id = id;
    }

    public String id() {
      return id;
    }
  }

  /**
   * One comparison.
   *
   * @param places in reading order; the unknown quantity has no number, its place is the question
   * @param byHand whether a teacher set the roles
   */
  record Understood(String text, Comparison story, List<Place> places, List<NumberInText> numbers,
      List<String> holders, List<NounInText> nouns, boolean byHand) implements ReadText {
    public Understood {
      places = List.copyOf(places);
      numbers = List.copyOf(numbers);
      holders = List.copyOf(holders);
      nouns = List.copyOf(nouns);
    }

    public Kind kind() {
      return story.kind();
    }

    /** All places that say this part, in reading order. */
    public List<SourceSpan> places(Part part) {
      return places.stream().filter(place -> place.part() == part).map(Place::at).toList();
    }

    @Override
    public <T> T match(Cases<T> cases) {
      return cases.understood(this);
    }
  }

  /**
   * No story.
   *
   * @param at where, at least one place, the most telling first
   * @param found what was found, a whole sentence
   * @param expected what a comparison has there, a whole sentence
   * @param advice one thing to try, a whole sentence
   */
  record Declined(String text, Reason reason, List<SourceSpan> at, String found, String expected, String advice,
      List<NumberInText> numbers, List<String> holders, List<NounInText> nouns) implements ReadText {
    public Declined {
      at = List.copyOf(at);
      numbers = List.copyOf(numbers);
      holders = List.copyOf(holders);
      nouns = List.copyOf(nouns);
    }

    /** The three sentences as one. */
    public String says() {
      return found + " " + expected + " " + advice;
    }

    @Override
    public <T> T match(Cases<T> cases) {
      return cases.declined(this);
    }
  }

  /** Why a text was not taken for one comparison. */
  enum Reason {
    /** Nothing but blanks. */
    EMPTY("empty"),
    /** Longer than a problem is. */
    TOO_LONG("too-long"),
    /** Spanish, or no language the reader knows. */
    NOT_ENGLISH("not-english"),
    /** Fewer than two numbers that could belong to the comparison. */
    TOO_FEW_NUMBERS("too-few-numbers"),
    /** A fraction, a decimal, a number below 0. */
    NOT_WHOLE("not-whole"),
    /** A number larger than a story may hold. */
    TOO_LARGE("too-large"),
    /** No sentence asks. */
    NO_QUESTION("no-question"),
    /** More than one thing is asked. */
    TWO_QUESTIONS("two-questions"),
    /** "Who has more?": the answer is not a number. */
    NO_NUMBER_ASKED("no-number-asked"),
    /** No sentence compares. */
    NO_COMPARISON("no-comparison"),
    /** Two comparing sentences. */
    TWO_COMPARISONS("two-comparisons"),
    /** "3 times as many", "twice", "half": not a difference. */
    TIMES("times"),
    /** "as many as": there is no difference. */
    EQUAL("equal"),
    /** "5 more" and no "than": an amount added, or a comparison with something unsaid. */
    MORE_WITHOUT_THAN("more-without-than"),
    /** The two sides are not told apart, or who has more is not said. */
    WHO_HAS_MORE("who-has-more"),
    /** A pronoun that may mean two. */
    WHICH_ONE("which-one"),
    /** Something is given, lost, eaten, joined: amounts change. */
    CHANGE("change"),
    /** "altogether", "in all": a second step, or combining. */
    TOTAL("total"),
    /** "each", "every", "per": equal groups. */
    GROUPS("groups"),
    /** "about 50", "more than 50": not one number. */
    INEXACT("inexact"),
    /** Inches and feet, dollars and cents. */
    TWO_UNITS("two-units"),
    /** "not", "or", "unless": more than one case. */
    NOT_PLAIN("not-plain"),
    /** The numbers or the sentences contradict one another. */
    CONTRADICTION("contradiction"),
    /** What is asked is already said. */
    NOTHING_TO_FIND("nothing-to-find"),
    /** What is asked is not the third number of the comparison. */
    ANOTHER_QUESTION("another-question"),
    /** Two numbers stand for the same amount. */
    TWO_NUMBERS_FOR_ONE("two-numbers-for-one"),
    /** A sentence with a number or a comparing word that the grammar does not have. */
    UNREAD("unread"),
    /** Roles set by hand that make no story. */
    ROLES("roles");

    private final String id;

    Reason(String id) {
      this.id = id;
    }

    public String id() {
      return id;
    }
  }
}
