package fewermore.classroom;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a finding says in American English: in the past tense, of the work, never of the kind of child. */
public final class FindingWords {
  private FindingWords() {}

  /** The statement that follows the number of children: "took away where they read <i>fewer</i>." */
  public static Phrase predicate(Finding finding) {
    boolean one = finding.children().size() == 1;
    return switch (finding.topic()) {
      case TOOK_AWAY_AT_FEWER -> one
          ? Phrase.of("took away where the word was ").word("fewer").text(".")
          : Phrase.of("took away where they read ").word("fewer").text(".");
      case ADDED_AT_MORE -> one
          ? Phrase.of("added where the word was ").word("more").text(".")
          : Phrase.of("added where they read ").word("more").text(".");
      case DIFFERENCE_AS_AMOUNT -> Phrase.of("took the difference for an amount: ").text(becomes(finding)).text(".");
      case TURNED_ROUND -> Phrase.of("turned the subtraction round: ").work(quoted(finding)).text(".");
      case ADDED_ANYWAY -> Phrase.of("added where word and story both say to take away.");
      case TOOK_AWAY_ANYWAY -> Phrase.of("took away where word and story both say to add.");
      case CHANGED -> Phrase.of(one ? "wrote otherwise on the last day: " : "wrote otherwise on their last day: ")
          .text(names(finding.children())).text(".");
      case FROM_THE_STORY -> Phrase.of("wrote what the story says, also where the word points the other way.");
      case NO_ONE_WAY -> Phrase.of("followed no one way so far.");
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
      case DIFFERENCE_AS_AMOUNT -> Phrase.of("The number of the difference stood alone, or on a bar, in ")
          .count(count).text(" pieces of work that could tell. It is the gap between two amounts.");
      case TURNED_ROUND -> Phrase.of("The smaller number came first in ").count(count)
          .text(" equations that the story asks to take away. The two numbers are the right ones.");
      case ADDED_ANYWAY, TOOK_AWAY_ANYWAY -> Phrase.of("No word pulls there. It was so in ").count(count)
          .text(equations(tally));
      case CHANGED -> Phrase.of("Earlier work showed one thing, the latest day another. Both are below.");
      case FROM_THE_STORY -> Phrase.of("Where the word and the story part ways, the equation said what the story says in ")
          .count(count).text(equations(tally));
      case NO_ONE_WAY -> Phrase.of("Six or more problems could tell, and no pattern comes back in three of five.");
      case TOO_EARLY -> Phrase.of("Fewer than three problems could tell, or too few of them say the same. ")
          .text("A problem tells when the word and the story point different ways.");
    };
  }

  /** "Elsie and Kofi did the same with <i>more</i>." */
  private static Phrase alsoAtTheOtherWord(Finding finding, Phrase lead) {
    boolean fewer = finding.topic() == Topic.TOOK_AWAY_AT_FEWER;
    Pattern other = fewer ? Pattern.ADDED_AT_MORE : Pattern.TOOK_AWAY_AT_FEWER;
    List<ChildFinding> too = finding.children().stream()
        .filter(child -> child.evidence().stream()
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

  private static String becomes(Finding finding) {
    return sample(finding).map(quote -> {
      int gap = quote.problem().story().amounts().secondPart();
      return "“" + gap + " " + quote.problem().story().wording().id() + "” became “" + gap + "”";
    }).orElse("");
  }

  private static Optional<Quote> sample(Finding finding) {
    return finding.children().stream().flatMap(child -> child.evidence().stream())
        .filter(quote -> quote.says() == Says.SO).findFirst();
  }
}
