package fewermore.web.teacher;

import fewermore.problem.TypedProblem;
import fewermore.story.Thing;
import fewermore.wording.Gender;
import fewermore.wording.Holder;
import fewermore.wording.Noun;
import fewermore.wording.Pronoun;
import fewermore.wording.TeachersSpanish;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * The words of a typed problem that have no Spanish of ours: the teacher gives it. Form fields, for the noun or holder
 * of each number: {@code es-noun-0} (the English it is for), {@code es-one-0}, {@code es-many-0}, {@code es-gender-0};
 * {@code es-holder-0} (English), {@code es-phrase-0}.
 *
 * @param kept what she gave before
 */
public record SpanishAsked(TeachersSpanish kept, List<AskedNoun> nouns, List<AskedHolder> holders) {
  public static final SpanishAsked NOTHING = new SpanishAsked(TeachersSpanish.NONE, List.of(), List.of());
  private static final String WORDS = "\\p{L}[\\p{L}\\p{M} '’-]{0,59}";

  public SpanishAsked {
    nouns = List.copyOf(nouns);
    holders = List.copyOf(holders);
  }

  /** @param gender {@code f}, {@code m} or empty */
  public record AskedNoun(int index, Thing thing, String one, String many, String gender) {
    public boolean feminine() {
      return gender.equals("f");
    }

    public boolean masculine() {
      return gender.equals("m");
    }

    boolean complete() {
      return one.matches(WORDS) && many.matches(WORDS) && (gender.equals("f") || gender.equals("m"));
    }
  }

  public record AskedHolder(int index, String english, String phrase) {
    boolean complete() {
      return phrase.matches(WORDS);
    }
  }

  /** @param field the form's fields by name; empty where there is none */
  public static SpanishAsked of(TypedProblem problem, TeachersSpanish kept, UnaryOperator<String> field) {
    List<AskedNoun> nouns = new ArrayList<>();
    for (Noun noun : problem.nounsWithoutSpanish()) {
      int at = nouns.size();
      Noun before = kept.nouns().stream().filter(each -> each.thing().equals(noun.thing())).findFirst().orElse(null);
      boolean typed = field.apply("es-noun-" + at).equals(noun.many());
      nouns.add(typed ? new AskedNoun(at, noun.thing(), field.apply("es-one-" + at).strip(),
          field.apply("es-many-" + at).strip(), field.apply("es-gender-" + at))
          : before == null ? new AskedNoun(at, noun.thing(), "", "", "")
          : new AskedNoun(at, noun.thing(), before.spanishOne(), before.spanishMany(),
              before.gender() == Gender.FEMININE ? "f" : "m"));
    }
    List<AskedHolder> holders = new ArrayList<>();
    for (Holder holder : problem.holdersWithoutSpanish()) {
      int at = holders.size();
      String before = kept.holders().stream().filter(each -> each.english().equalsIgnoreCase(holder.english()))
          .map(Holder::spanish).findFirst().orElse("");
      boolean typed = field.apply("es-holder-" + at).equals(holder.english());
      holders.add(new AskedHolder(at, holder.english(), typed ? field.apply("es-phrase-" + at).strip() : before));
    }
    return new SpanishAsked(kept, nouns, holders);
  }

  /** What is given in whole: the fields before what was kept. */
  public TeachersSpanish words() {
    List<Noun> allNouns = new ArrayList<>(given().nouns());
    allNouns.addAll(kept.nouns());
    List<Holder> allHolders = new ArrayList<>(given().holders());
    allHolders.addAll(kept.holders());
    return new TeachersSpanish(allNouns, allHolders);
  }

  /** What stands complete in the fields. */
  public TeachersSpanish given() {
    return new TeachersSpanish(
        nouns.stream().filter(AskedNoun::complete).map(each -> new Noun(each.thing.one(), each.thing.many(), each.one,
            each.many, each.gender.equals("f") ? Gender.FEMININE : Gender.MASCULINE)).toList(),
        holders.stream().filter(AskedHolder::complete)
            .map(each -> new Holder(each.english, each.phrase, Pronoun.NONE)).toList());
  }

  public boolean any() {
    return !nouns.isEmpty() || !holders.isEmpty();
  }
}
