package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.util.List;

/**
 * A scenario with its persons filled in: all that a sentence needs beside the story's numbers, roles and wording.
 * Every case knows who or what is the larger and the smaller side.
 */
public sealed interface Scene {

  /** "Ines found 52 shells." */
  record Counted(Holder larger, Holder smaller, Noun thing, Verb verb, List<Noun> wider) implements Scene {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.counted(this);
    }

    @Override
    public List<Noun> nouns() {
      return List.of(thing);
    }

    @Override
    public List<Holder> holders() {
      return List.of(larger, smaller);
    }

    @Override
    public Persons persons() {
      return new Persons(larger.english(), smaller.english());
    }

    @Override
    public Thing counted(Role role, boolean more) {
      return thing.thing();
    }

    @Override
    public Thing other(Role role, boolean more) {
      return null;
    }
  }

  /**
   * "There are 52 hens on the farm." or "Ines picked 52 apples."; what is compared are the kinds.
   *
   * @param place may be null
   * @param owner who has both kinds, or null when they are somewhere
   */
  record Kinds(Noun larger, Noun smaller, String place, String spanishPlace, Holder owner, Verb verb,
      List<Noun> wider) implements Scene {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.kinds(this);
    }

    @Override
    public List<Noun> nouns() {
      return List.of(larger, smaller);
    }

    @Override
    public List<Holder> holders() {
      return owner == null ? List.of() : List.of(owner);
    }

    @Override
    public Persons persons() {
      return new Persons(larger.many(), smaller.many());
    }

    @Override
    public Thing counted(Role role, boolean more) {
      return (askedIsLarger(role, more) ? larger : smaller).thing();
    }

    @Override
    public Thing other(Role role, boolean more) {
      return (askedIsLarger(role, more) ? smaller : larger).thing();
    }
  }

  /** "Ines has 52 brown toads." where Tomas has spotted toads. */
  record EachItsKind(Holder larger, Holder smaller, Noun largerKind, Noun smallerKind, Verb verb, List<Noun> wider)
      implements Scene {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.eachItsKind(this);
    }

    @Override
    public List<Noun> nouns() {
      return List.of(largerKind, smallerKind);
    }

    @Override
    public List<Holder> holders() {
      return List.of(larger, smaller);
    }

    @Override
    public Persons persons() {
      return new Persons(larger.english(), smaller.english());
    }

    @Override
    public Thing counted(Role role, boolean more) {
      return (askedIsLarger(role, more) ? largerKind : smallerKind).thing();
    }

    @Override
    public Thing other(Role role, boolean more) {
      return (askedIsLarger(role, more) ? smallerKind : largerKind).thing();
    }
  }

  /** "Ines's rope is 52 feet long."; the thing counted is the unit. */
  record Measured(Holder larger, Holder smaller, Noun owned, Noun unit, Measure measure) implements Scene {
    @Override
    public <T> T match(Cases<T> cases) {
      return cases.measured(this);
    }

    @Override
    public List<Noun> nouns() {
      return owned == null ? List.of(unit) : List.of(unit, owned);
    }

    @Override
    public List<Holder> holders() {
      return List.of(larger, smaller);
    }

    @Override
    public Persons persons() {
      return new Persons(larger.english(), smaller.english());
    }

    @Override
    public Thing counted(Role role, boolean more) {
      return unit.thing();
    }

    @Override
    public Thing other(Role role, boolean more) {
      return null;
    }

    @Override
    public List<Noun> wider() {
      return List.of();
    }
  }

  /** One answer for each case, so that a new case can't be forgotten. */
  interface Cases<T> {
    T counted(Counted scene);

    T kinds(Kinds scene);

    T eachItsKind(EachItsKind scene);

    T measured(Measured scene);
  }

  <T> T match(Cases<T> cases);

  /** All nouns the sentences need. */
  List<Noun> nouns();

  /** All holders the sentences name. */
  List<Holder> holders();

  /** Who or what has more and who has fewer, as a story names them. */
  Persons persons();

  /**
   * What an answer counts. Where kinds are compared and the difference is asked, it is the kind the question begins
   * with: hens in "how many more hens than ducks".
   *
   * @param more whether the question begins with the larger: always, but for "how many fewer"
   */
  Thing counted(Role unknown, boolean more);

  /** The other kind, or null. */
  Thing other(Role unknown, boolean more);

  /** Words too general for the label. */
  List<Noun> wider();

  /** The story this scene tells with these numbers. */
  default Comparison story(Relation amounts, Role unknown, Wording wording) {
    boolean more = wording != Wording.FEWER;
    return new Comparison(persons(), counted(unknown, more), other(unknown, more),
        wider().stream().map(Noun::thing).toList(), amounts, unknown, wording, List.of());
  }

  private static boolean askedIsLarger(Role unknown, boolean more) {
    return unknown == Role.LARGER || unknown == Role.DIFFERENCE && more;
  }
}
