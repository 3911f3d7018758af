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
import java.util.stream.Stream;

/** Gives a scenario its persons, and a story its scene. */
final class Casting {
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

  static Optional<Scene> recognize(Comparison story, Random random) {
    String largerName = story.persons().larger();
    String smallerName = story.persons().smaller();
    if (story.otherThing() != null && !holdersApartFromKinds(story)) {
      return Optional.of(kindsOf(story));
    }
    if (largerName == null || smallerName == null || largerName.equalsIgnoreCase(smallerName)) {
      return Optional.empty();
    }
    Holder larger = holder(largerName);
    Holder smaller = holder(smallerName);
    List<Noun> wider = story.wider().stream().map(Casting::noun).toList();
    Noun thing = noun(story.thing());
    if (story.otherThing() != null) {
      boolean first = answerIsLarger(story);
      Noun other = noun(story.otherThing());
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

  private static Scene kindsOf(Comparison story) {
    boolean first = story.persons().larger() != null && story.persons().smaller() != null
        ? names(story.thing(), story.persons().larger()) : answerIsLarger(story);
    Noun larger = noun(first ? story.thing() : story.otherThing());
    Noun smaller = noun(first ? story.otherThing() : story.thing());
    for (Scenario scenario : Scenarios.ALL) {
      if (scenario instanceof TwoKinds kinds && !kinds.hasOwner()
          && Set.of(kinds.first(), kinds.second()).equals(Set.of(larger, smaller))) {
        return kindsScene(kinds, larger, smaller, null);
      }
    }
    return new Scene.Kinds(larger, smaller, null, null, null, null,
        story.wider().stream().map(Casting::noun).toList());
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

  private static Verb verbFor(Noun thing, Random random) {
    List<Verb> verbs = Scenarios.ALL.stream().filter(Counted.class::isInstance).map(Counted.class::cast)
        .filter(counted -> counted.thing().equals(thing)).map(Counted::verb).toList();
    return verbs.isEmpty() ? Verb.HAVE : verbs.get(random.nextInt(verbs.size()));
  }

  private static Noun noun(Thing thing) {
    return Lexicon.noun(thing.one()).filter(noun -> noun.thing().equals(thing))
        .orElseGet(() -> Noun.englishOnly(thing));
  }

  /** A name begins with a capital letter; "the red team" is a thing, "the girls" are several. */
  private static Holder holder(String name) {
    if (Character.isUpperCase(name.codePointAt(0))) {
      return Holder.child(name, ChildNames.pronoun(name));
    }
    Pronoun pronoun = several(name) ? Pronoun.THEY : Pronoun.IT;
    return Lexicon.holder(name).orElseGet(() -> new Holder(name, spanish(name, pronoun == Pronoun.THEY), pronoun));
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
