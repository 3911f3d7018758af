package fewermore.classroom;

import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.Statement;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Role;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a finding says in American English: in the past tense, of the work, never of the kind of child. */
public final class FindingWords {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE, MMM d", Locale.US);

  private static final List<String> SAYS_FEWER = List.of("fewer", "less", "shorter", "younger", "lighter");
  private static final List<String> SAYS_MORE = List.of("more", "longer", "older", "taller", "heavier");

  private FindingWords() {}

  /** The statement that follows the number of children: "took away where they read <i>fewer</i>." */
  public static Phrase predicate(Finding finding) {
    boolean one = finding.children().size() == 1;
    return switch (finding.topic()) {
      case TOOK_AWAY_AT_FEWER -> Phrase.of(one ? "took away where the word was " : "took away where they read ")
          .word(wordRead(finding, Pattern.TOOK_AWAY_AT_FEWER, SAYS_FEWER)).text(".");
      case ADDED_AT_MORE -> Phrase.of(one ? "added where the word was " : "added where they read ")
          .word(wordRead(finding, Pattern.ADDED_AT_MORE, SAYS_MORE)).text(".");
      case DIFFERENCE_AS_AMOUNT -> Phrase.of("took the difference for an amount: ").text(becomes(finding)).text(".");
      case TURNED_ROUND -> Phrase.of("turned the subtraction round: ").work(quoted(finding)).text(".");
      case ADDED_ANYWAY -> Phrase.of("added where the problem is to take away, whatever the word.");
      case TOOK_AWAY_ANYWAY -> Phrase.of("took away where the problem is to add, whatever the word.");
      case CHANGED -> Phrase.of(one ? "wrote otherwise on the last day: " : "wrote otherwise on their last day: ")
          .text(names(finding.children())).text(".");
      case FROM_THE_STORY -> Phrase.of("wrote what the story says, also where the word points the other way.");
      case NO_ONE_WAY -> Phrase.of("followed no one way so far.");
      case PUT_ASIDE -> Phrase.of("showed what you put aside: ").text(names(finding.children())).text(".");
      case TOO_EARLY -> Phrase.of("too early to tell.");
    };
  }

  /** The whole sentence: "4 children took away where they read <i>fewer</i>." */
  public static Phrase headline(Finding finding) {
    int many = finding.children().size();
    String whose = many == 1 ? " child " : " children ";
    if (finding.topic() == Topic.TOO_EARLY) {
      return Phrase.of("Too early to tell about ").count(Integer.toString(many)).text(whose.stripTrailing() + ".");
    }
    return new Phrase(List.of()).count(Integer.toString(many)).text(whose).and(predicate(finding));
  }

  /** One or two sentences under the headline: the count behind it, and what else the same work shows. */
  public static Phrase lead(Finding finding) {
    Tally tally = finding.tally();
    String count = tally.words();
    return switch (finding.topic()) {
      case TOOK_AWAY_AT_FEWER, ADDED_AT_MORE -> alsoAtTheOtherWord(finding,
          Phrase.of("Where the word and the story part ways, the sign the word pulls to was written in ")
              .count(count).text(equations(tally)));
      case DIFFERENCE_AS_AMOUNT -> Phrase.of("The number of the difference stood alone, or on a bar, where an amount was asked, ")
          .text("or an amount where the difference was asked, in ").count(count)
          .text(" pieces of work that could tell. The difference is the gap between two amounts.");
      case TURNED_ROUND -> Phrase.of("The smaller number came first in ").count(count)
          .text(" equations that the story asks to take away. The two numbers are the right ones.");
      case ADDED_ANYWAY, TOOK_AWAY_ANYWAY -> Phrase.of("Where the word points to what the story says, the other sign was still written in ")
          .count(count).text(equations(tally));
      case CHANGED -> Phrase.of("Earlier work showed one thing, the latest day another. Both are below.");
      case FROM_THE_STORY -> Phrase.of("Where the word and the story part ways, the equation said what the story says in ")
          .count(count).text(equations(tally));
      case NO_ONE_WAY -> Phrase.of("Six problems or more, and no one way comes back in them. That is about the work so far, not about the child.");
      case PUT_ASIDE -> Phrase.of("Your note stands on each child’s page. What you put aside is not counted and not said.");
      case TOO_EARLY -> Phrase.of("No way is likely enough as of the latest work, fewer than two problems could tell it from the next, or the work is changing. ")
          .text("What would tell more stands on each child’s page.");
    };
  }

  // About one child

  /** What may be said of one child, with the work quoted; the words for each strength, in this one place. */
  public static Phrase ofChild(ChildFinding said) {
    ChildReasoning reasoning = said.reasoning();
    Statement says = reasoning.says();
    String name = said.child().name();
    if (reasoning.setAside().isPresent()) {
      return Phrase.of("You put aside what the work would say of " + name + ".");
    }
    return switch (says.strength()) {
      case TOO_EARLY -> Phrase.of("Too early to tell. ").and(early(reasoning));
      case LOOKS_AS_IF -> Phrase.of(since(reasoning).isEmpty() ? "It looks as if " + name + " "
          : since(reasoning) + "it looks as if " + name + " ").and(way(says.way())).text(": ").and(count(said));
      case CLEAR -> Phrase.of(since(reasoning) + name + " ").and(way(says.way())).text(": ").and(count(said));
      case CHANGED -> Phrase.of("On " + day(says.wasOn()) + " it looked as if " + name + " ").and(way(says.was()))
          .text("; on " + day(says.asOf()) + " as if " + name + " ").and(way(says.way())).text(". Both are below.");
      case MIXED -> Phrase.of("The work of " + name + " follows no one way so far.");
    };
  }

  /** "goes by the word", never "is a keyword solver". */
  public static Phrase way(WayOfReasoning way) {
    return switch (way) {
      case FROM_THE_STORY -> Phrase.of("reads the story");
      case BY_THE_CUE_WORD -> Phrase.of("goes by the word");
      case ALWAYS_ADDS -> Phrase.of("adds the two numbers");
      case ALWAYS_TAKES_AWAY -> Phrase.of("takes the two numbers away");
      case TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT -> Phrase.of("takes the gap for an amount");
      case TURNS_SUBTRACTION_ROUND -> Phrase.of("turns the subtraction round");
      case NO_STEADY_WAY -> Phrase.of("follows no one way");
    };
  }

  /** The same as what one does: "reading the story". */
  public static String doing(WayOfReasoning way) {
    return switch (way) {
      case FROM_THE_STORY -> "reading the story";
      case BY_THE_CUE_WORD -> "following the word";
      case ALWAYS_ADDS -> "always adding";
      case ALWAYS_TAKES_AWAY -> "always taking away";
      case TAKES_THE_DIFFERENCE_FOR_AN_AMOUNT -> "taking the gap for an amount";
      case TURNS_SUBTRACTION_ROUND -> "turning the subtraction round";
      case NO_STEADY_WAY -> "no one way";
    };
  }

  /** The word that stands in the stories they went by; the plain one where any story has it. */
  private static String wordRead(Finding finding, Pattern pattern, List<String> words) {
    List<String> stories = samples(finding).filter(quote -> pattern.relevant(quote.problem().kind()))
        .map(quote -> quote.problem().text()).toList();
    return words.stream()
        .filter(word -> stories.stream().anyMatch(story -> List.of(story.split("\\W+")).contains(word))).findFirst().orElse(words.get(0));
  }

  /** Whether a problem tells the child's likeliest way from the next: the same words on every page. */
  public static String tells(ChildReasoning reasoning, Kind kind) {
    if (reasoning.onlyAgreeing()) {
      return "tells nothing between following the word and not";
    }
    String between = doing(reasoning.likeliest()) + " and " + doing(reasoning.nextLikeliest());
    return reasoning.couldTell(kind) ? "tells between " + between : "tells nothing between " + between;
  }

  private static Phrase count(ChildFinding said) {
    Tally tally = said.tally();
    return tally.of() == 0 ? Phrase.of("see the work below.")
        : Phrase.of("").count(tally.words()).text(tally.of() == 1 ? " problem that could show it." : " problems that could show it.");
  }

  /** Why it is too early: "3 problems so far; none of them tells …" */
  public static Phrase early(ChildReasoning reasoning) {
    Statement says = reasoning.says();
    String problems = says.problems() + (says.problems() == 1 ? " problem so far" : " problems so far");
    return switch (says.early()) {
      case NO_WORK -> Phrase.of("No problem so far that could tell.");
      case ONLY_AGREEING -> Phrase.of(problems + "; none of them is one where the word points the other way.");
      case NO_WAY_LIKELY_ENOUGH -> Phrase.of(problems + (says.problems() == 1 ? "; it fits"
          : reasoning.estimate().days().size() == 1 ? "; they fit" : "; the latest fit") + " more than one way.");
      case TOO_FEW_THAT_TELL -> Phrase.of(problems + "; fewer than two of them could tell "
          + doing(reasoning.likeliest()) + " from " + doing(reasoning.nextLikeliest()) + ".");
      case MAY_BE_CHANGING -> Phrase.of(problems + "; the last two say something else than the ones before.");
    };
  }

  private static String since(ChildReasoning reasoning) {
    return reasoning.since().map(day -> "Since " + day(day) + ", ").orElse("");
  }

  private static String day(LocalDate day) {
    return day.format(DAY);
  }

  /** "Elsie and Kofi did the same with <i>more</i>." */
  private static Phrase alsoAtTheOtherWord(Finding finding, Phrase lead) {
    boolean fewer = finding.topic() == Topic.TOOK_AWAY_AT_FEWER;
    Pattern other = fewer ? Pattern.ADDED_AT_MORE : Pattern.TOOK_AWAY_AT_FEWER;
    List<ChildFinding> too = finding.children().stream()
        .filter(child -> child.reasoning().showing(child.evidence()).stream()
            .anyMatch(quote -> other.relevant(quote.problem().kind()) && quote.says() == Says.SO))
        .toList();
    if (too.isEmpty()) {
      return lead;
    }
    boolean all = too.size() == finding.children().size() && too.size() > 1;
    return lead.text(" ").text(all ? "All of them" : names(too)).text(" did the same with ")
        .word(fewer ? "more" : "fewer").text(".");
  }

  /** "Ana", "Ana and Bo", "Ana, Bo, and Cy". */
  static String names(List<ChildFinding> children) {
    List<String> names = children.stream().map(child -> child.child().name()).sorted().toList();
    return switch (names.size()) {
      case 1 -> names.get(0);
      case 2 -> names.get(0) + " and " + names.get(1);
      default -> names.stream().limit(names.size() - 1L).collect(Collectors.joining(", "))
          + ", and " + names.get(names.size() - 1);
    };
  }

  private static String equations(Tally tally) {
    return tally.of() == 1 ? " equation." : " equations.";
  }

  private static String quoted(Finding finding) {
    return sample(finding).map(Quote::text).orElse("");
  }

  /** How "25 fewer" became "25"; where no amount was asked in any of the work, how "how many fewer" did. */
  private static String becomes(Finding finding) {
    Optional<Quote> amount = samples(finding).filter(quote -> quote.problem().kind().unknown() != Role.DIFFERENCE).findFirst();
    return amount.or(() -> sample(finding)).map(quote -> {
      Comparison story = quote.problem().story();
      int number = Pattern.takenForAnAmount(story);
      String told = (amount.isPresent() ? Integer.toString(number) : "how many") + " " + story.wording().id();
      return "“" + told + "” became “" + number + "”";
    }).orElse("");
  }

  private static Optional<Quote> sample(Finding finding) {
    return samples(finding).findFirst();
  }

  private static Stream<Quote> samples(Finding finding) {
    return finding.children().stream().flatMap(child -> child.evidence().stream())
        .filter(quote -> quote.says() == Says.SO);
  }
}
