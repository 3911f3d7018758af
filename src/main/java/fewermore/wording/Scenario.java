package fewermore.wording;

import java.util.List;
import java.util.stream.Stream;

/**
 * What a problem is about, without its persons and numbers. The three cases are told with different sentences:
 * holders who have a counted thing, two kinds of thing compared, and something measured in a unit.
 */
public sealed interface Scenario {
  /** A short name that never changes, kept with each problem: "shells". */
  String id();

  /** Which part of a balanced choice of problems it belongs to. */
  Topic topic();

  /** One answer for each case, so that a new case can't be forgotten. */
  interface Cases<T> {
    T counted(Counted scenario);

    T twoKinds(TwoKinds scenario);

    T measured(Measured scenario);
  }

  <T> T match(Cases<T> cases);

  /** All its nouns, wider words included. */
  List<Noun> nouns();

  /** What kind of amounts a scenario compares. */
  enum Topic { COUNTED, TWO_KINDS, LENGTH, WEIGHT, TIME, MONEY, POINTS, AGE, DISTANCE, CAPACITY }

  /** "Ines found 52 shells": two children and the same thing. */
  record Counted(String id, Topic topic, Noun thing, Verb verb, List<Noun> wider) implements Scenario {
    public Counted {
      wider = List.copyOf(wider);
    }

    @Override
    public <T> T match(Cases<T> cases) {
      return cases.counted(this);
    }

    @Override
    public List<Noun> nouns() {
      return Stream.concat(List.of(thing).stream(), wider.stream()).toList();
    }
  }

  /**
   * Two kinds of thing. "There are 52 hens on the farm": nobody has them, they are somewhere; or one child has both.
   *
   * @param first one kind, which may be the more or the fewer
   * @param second the other
   * @param place where they are in English ("on the farm"), or null when a child has them
   * @param spanishPlace the same in Spanish
   * @param verb what the child does with them, or null when there is a place
   * @param wider words too general for an answer's label; may be empty
   */
  record TwoKinds(String id, Noun first, Noun second, String place, String spanishPlace, Verb verb, List<Noun> wider)
      implements Scenario {
    public TwoKinds {
      wider = List.copyOf(wider);
    }

    @Override
    public <T> T match(Cases<T> cases) {
      return cases.twoKinds(this);
    }

    @Override
    public List<Noun> nouns() {
      return Stream.concat(List.of(first, second).stream(), wider.stream()).toList();
    }

    @Override
    public Topic topic() {
      return Topic.TWO_KINDS;
    }

    boolean hasOwner() {
      return verb != null;
    }
  }

  /**
   * An amount in a unit: of what a child owns ("Ines's rope"), of the child itself ("Ines read"), or of two things
   * ("the tree", "the barn").
   *
   * @param owned what each child owns and is measured, or null
   * @param pairs things that are compared with each other; empty when children are
   */
  record Measured(String id, Topic topic, Noun unit, Measure measure, Noun owned, List<List<Holder>> pairs)
      implements Scenario {
    public Measured {
      pairs = List.copyOf(pairs);
    }

    @Override
    public <T> T match(Cases<T> cases) {
      return cases.measured(this);
    }

    @Override
    public List<Noun> nouns() {
      return owned == null ? List.of(unit) : List.of(unit, owned);
    }

    boolean ofChildren() {
      return pairs.isEmpty();
    }
  }
}
