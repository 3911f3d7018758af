package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import fewermore.wording.Scenario.Counted;
import fewermore.wording.Scenario.Measured;
import fewermore.wording.Scenario.TwoKinds;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Gives a scenario its persons, and a story its scene. */
final class Casting {
  private static final Pattern WORD = Pattern.compile("[^\\p{L}]+");
  private static final Set<String> FORMS_OF_HAVE = Set.of("has", "have", "had");

  private Casting() {}

  static Optional<Scene> cast(Scenario scenario, Random random, Collection<String> avoid, Set<String> used) {
    return scenario.match(new Scenario.Cases<>() {
      @Override
      public Optional<Scene> counted(Counted counted) {
        return ChildNames.pair(random, avoid, used).map(pair ->
            new Scene.Counted(pair.get(0), pair.get(1), counted.thing(), counted.verb(), counted.wider()));
      }

      @Override
      public Optional<Scene> twoKinds(TwoKinds kinds) {
        boolean turned = random.nextBoolean();
        Noun larger = turned ? kinds.second() : kinds.first();
        Noun smaller = turned ? kinds.first() : kinds.second();
        if (!kinds.hasOwner()) {
          return Optional.of(kindsScene(kinds, larger, smaller, null));
        }
        return ChildNames.one(random, avoid, used).map(owner -> kindsScene(kinds, larger, smaller, owner));
      }

      @Override
      public Optional<Scene> measured(Measured measured) {
        if (measured.ofChildren()) {
          return ChildNames.pair(random, avoid, used).map(pair -> measuredScene(measured, pair.get(0), pair.get(1)));
        }
        List<Holder> pair = measured.pairs().get(random.nextInt(measured.pairs().size()));
        int larger = random.nextInt(2);
        return Optional.of(measuredScene(measured, pair.get(larger), pair.get(1 - larger)));
      }
    });
  }

  static Optional<Scene> recognize(Comparison story, Random random, TeachersSpanish spanish) {
    String largerName = story.persons().larger();
    String smallerName = story.persons().smaller();
    if (story.otherThing() != null && !holdersApartFromKinds(story)) {
      return Optional.of(kindsOf(story, spanish));
    }
    if (largerName == null || smallerName == null || largerName.equalsIgnoreCase(smallerName)) {
      return Optional.empty();
    }
    Holder larger = holder(largerName, spanish);
    Holder smaller = holder(smallerName, spanish);
    List<Noun> wider = story.wider().stream().map(word -> noun(word, spanish)).toList();
    Noun thing = noun(story.thing(), spanish);
    if (story.otherThing() != null) {
      boolean first = answerIsLarger(story);
      Noun other = noun(story.otherThing(), spanish);
      return Optional.of(new Scene.EachItsKind(larger, smaller, first ? thing : other, first ? other : thing,
          Verb.HAVE, wider));
    }
    return Optional.of(measuredAs(thing, larger, smaller, random)
        .orElseGet(() -> new Scene.Counted(larger, smaller, thing, verbFor(thing, random), wider)));
  }

  /** Whether the story names holders beside the two kinds: not when the kinds themselves stand as holders. */
  private static boolean holdersApartFromKinds(Comparison story) {
    String larger = story.persons().larger();
    String smaller = story.persons().smaller();
    return larger != null && smaller != null && !names(story.thing(), larger) && !names(story.otherThing(), larger)
        && !names(story.thing(), smaller) && !names(story.otherThing(), smaller);
  }

  private static boolean names(Thing thing, String holder) {
    String words = holder.toLowerCase(Locale.ROOT);
    return words.equals(thing.many().toLowerCase(Locale.ROOT)) || words.equals("the " + thing.many());
  }

  private static Scene kindsOf(Comparison story, TeachersSpanish spanish) {
    boolean first = story.persons().larger() != null && story.persons().smaller() != null
        ? names(story.thing(), story.persons().larger()) : answerIsLarger(story);
    Noun larger = noun(first ? story.thing() : story.otherThing(), spanish);
    Noun smaller = noun(first ? story.otherThing() : story.thing(), spanish);
    for (Scenario scenario : Scenarios.ALL) {
      if (scenario instanceof TwoKinds kinds && !kinds.hasOwner()
          && Set.of(kinds.first(), kinds.second()).equals(Set.of(larger, smaller))) {
        return kindsScene(kinds, larger, smaller, null);
      }
    }
    return new Scene.Kinds(larger, smaller, null, null, null, null,
        story.wider().stream().map(word -> noun(word, spanish)).toList());
  }

  /** Where the difference is asked in other words, the thing is taken for the more of the two. */
  private static boolean answerIsLarger(Comparison story) {
    return story.unknown() == Role.LARGER
        || story.unknown() == Role.DIFFERENCE && story.wording() != Wording.FEWER;
  }

  private static Optional<Scene> measuredAs(Noun unit, Holder larger, Holder smaller, Random random) {
    boolean children = larger.pronoun() != Pronoun.IT && smaller.pronoun() != Pronoun.IT;
    List<Measured> fitting = Stream.concat(Scenarios.ALL.stream(), Scenarios.KNOWN_UNITS.stream())
        .filter(Measured.class::isInstance).map(Measured.class::cast)
        .filter(measured -> measured.unit().equals(unit))
        .filter(measured -> children ? measured.ofChildren() : measured.owned() == null)
        .filter(measured -> children || measured.measure().hasAdjective() || !measured.ofChildren()).toList();
    if (fitting.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(measuredScene(fitting.get(random.nextInt(fitting.size())), larger, smaller));
  }

  /**
   * A scene told with the verb of a text where it is one of ours: "Ines has 52 shells" is not told as <i>encontró</i>.
   * <i>has</i> and <i>had</i> count after the others, since they help them: "has found".
   */
  static Scene toldAs(Scene scene, String text) {
    if (!(scene instanceof Scene.Counted counted)) {
      return scene;
    }
    Set<String> words = WORD.splitAsStream(text.toLowerCase(Locale.ROOT)).collect(Collectors.toSet());
    Verb verb = countedVerbs().filter(each -> !each.equals(Verb.HAVE))
        .filter(each -> words.contains(each.told()) || words.contains(each.base())).findFirst()
        .orElse(words.stream().anyMatch(FORMS_OF_HAVE::contains) ? Verb.HAVE : counted.verb());
    return new Scene.Counted(counted.larger(), counted.smaller(), counted.thing(), verb, counted.wider());
  }

  private static Stream<Verb> countedVerbs() {
    return Scenarios.ALL.stream().filter(Counted.class::isInstance).map(scenario -> ((Counted) scenario).verb());
  }

  private static Verb verbFor(Noun thing, Random random) {
    List<Verb> verbs = Scenarios.ALL.stream().filter(Counted.class::isInstance).map(Counted.class::cast)
        .filter(counted -> counted.thing().equals(thing)).map(Counted::verb).toList();
    return verbs.isEmpty() ? Verb.HAVE : verbs.get(random.nextInt(verbs.size()));
  }

  private static Noun noun(Thing thing, TeachersSpanish spanish) {
    return spanish.noun(thing).or(() -> Lexicon.noun(thing.one()).filter(noun -> noun.thing().equals(thing)))
        .orElseGet(() -> Noun.englishOnly(thing));
  }

  /**
   * A name begins with a capital letter; "the red team" is a thing, "the girls" are several. "Ana's brother" and
   * "Room 12" begin with one too, but are not the same in Spanish.
   */
  private static Holder holder(String name, TeachersSpanish spanish) {
    Optional<Holder> given = spanish.holder(name);
    if (given.isPresent()) {
      return given.get();
    }
    if (Character.isUpperCase(name.codePointAt(0))) {
      return name.matches("\\p{Lu}[\\p{L}\\p{M}-]+( \\p{Lu}[\\p{L}\\p{M}-]*)*") && Discourse.isName(name)
          ? Holder.child(name, ChildNames.pronoun(name)) : new Holder(name, null, Pronoun.NONE);
    }
    Pronoun pronoun = several(name) ? Pronoun.THEY : Pronoun.IT;
    return Lexicon.holder(name).orElseGet(() -> new Holder(name, spanish(name, pronoun == Pronoun.THEY), pronoun));
  }

  /** A holder or a kind in Spanish; see {@link Lexicon#inSpanish}. */
  static Optional<String> spanishOf(String phrase) {
    if (phrase.isEmpty() || Character.isUpperCase(phrase.codePointAt(0))) {
      return Optional.empty();
    }
    return phrase.startsWith("the ") ? Optional.ofNullable(spanish(phrase, several(phrase)))
        : Lexicon.noun(phrase).filter(Noun::hasSpanish)
            .map(noun -> noun.many().equals(phrase) ? noun.spanishMany() : noun.spanishOne());
  }

  /** "the red team" as "el equipo rojo", or null when its noun is not ours. */
  private static String spanish(String phrase, boolean several) {
    if (!phrase.startsWith("the ")) {
      return null;
    }
    return Lexicon.noun(phrase.substring(4)).map(noun -> several
        ? noun.gender().articleMany() + " " + noun.spanishMany()
        : noun.gender().article() + " " + noun.spanishOne()).orElse(null);
  }

  private static boolean several(String phrase) {
    String head = phrase.substring(phrase.lastIndexOf(' ') + 1).toLowerCase(Locale.ROOT);
    return head.length() > 2 && head.endsWith("s") && !head.endsWith("ss") && !head.endsWith("us")
        || Set.of("children", "people", "men", "women", "mice", "geese").contains(head);
  }

  private static Scene kindsScene(TwoKinds kinds, Noun larger, Noun smaller, Holder owner) {
    return new Scene.Kinds(larger, smaller, kinds.place(), kinds.spanishPlace(), owner, kinds.verb(), kinds.wider());
  }

  private static Scene measuredScene(Measured measured, Holder larger, Holder smaller) {
    return new Scene.Measured(larger, smaller, measured.owned(), measured.unit(), measured.measure());
  }
}
