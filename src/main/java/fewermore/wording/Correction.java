package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The roles of a text as a teacher sets them by hand. Nothing is checked here; {@link WordingReader#corrected} does
 * that and answers with the same form as reading.
 *
 * @param numbers the use of each number of {@link ReadText#numbers}, in the same order
 * @param unknown what is asked, or null while it is not said
 * @param wording the comparing word's way, or null while it is not said
 * @param persons who has more and who has fewer; names may be null
 * @param thing what the answer counts, or null while it is not said
 * @param otherThing the other kind, or null
 */
public record Correction(List<Use> numbers, Role unknown, Wording wording, Persons persons, Thing thing,
    Thing otherThing) {
  public Correction {
    numbers = List.copyOf(numbers);
    persons = persons == null ? Persons.UNNAMED : persons;
  }

  /** What a number of the text stands for. */
  public enum Use {
    LARGER(Role.LARGER),
    SMALLER(Role.SMALLER),
    DIFFERENCE(Role.DIFFERENCE),
    /** In the story, but not part of the comparison. */
    EXTRA(null);

    private final Role role;

    Use(Role role) {
      this.role = role;
    }

    public Optional<Role> role() {
      return Optional.ofNullable(role);
    }

    /** The word used in forms: {@code larger}, {@code smaller}, {@code difference} or {@code extra}. */
    public String id() {
      return role == null ? "extra" : role.id();
    }

    public static Optional<Use> of(String id) {
      for (Use use : values()) {
        if (use.id().equals(id)) {
          return Optional.of(use);
        }
      }
      return Optional.empty();
    }

    static Use of(Role role) {
      return switch (role) {
        case LARGER -> LARGER;
        case SMALLER -> SMALLER;
        case DIFFERENCE -> DIFFERENCE;
      };
    }
  }

  /**
   * Where a teacher begins: what was understood; of a declined text all numbers as extra, the first two holders as
   * they come, the first noun, and the rest unsaid.
   */
  public static Correction of(ReadText read) {
    return read.match(new ReadText.Cases<>() {
      @Override
      public Correction understood(ReadText.Understood understood) {
        Comparison story = understood.story();
        List<Use> uses = new ArrayList<>();
        for (ReadText.NumberInText number : understood.numbers()) {
          uses.add(useOf(understood, number));
        }
        return new Correction(uses, story.unknown(), story.wording(), story.persons(), story.thing(),
            story.otherThing());
      }

      @Override
      public Correction declined(ReadText.Declined declined) {
        List<String> holders = declined.holders();
        return new Correction(declined.numbers().stream().map(number -> Use.EXTRA).toList(), null, null,
            new Persons(holders.isEmpty() ? null : holders.get(0), holders.size() < 2 ? null : holders.get(1)),
            declined.nouns().isEmpty() ? null : declined.nouns().get(0).thing(), null);
      }
    });
  }

  private static Use useOf(ReadText.Understood understood, ReadText.NumberInText number) {
    return understood.places().stream().filter(place -> place.at().equals(number.at()))
        .flatMap(place -> Use.of(place.part().id()).stream()).findFirst().orElse(Use.EXTRA);
  }

  /**
   * The same with another use of one number.
   *
   * @param index in {@link #numbers}
   */
  public Correction withNumber(int index, Use use) {
    List<Use> changed = new ArrayList<>(numbers);
    changed.set(index, use);
    return new Correction(changed, unknown, wording, persons, thing, otherThing);
  }

  public Correction withUnknown(Role asked) {
    return new Correction(numbers, asked, wording, persons, thing, otherThing);
  }

  public Correction withWording(Wording said) {
    return new Correction(numbers, unknown, said, persons, thing, otherThing);
  }

  public Correction withPersons(Persons who) {
    return new Correction(numbers, unknown, wording, who, thing, otherThing);
  }

  /** @param other the other kind, or null */
  public Correction withThings(Thing counted, Thing other) {
    return new Correction(numbers, unknown, wording, persons, counted, other);
  }

  /** The other one has more: persons change places and nothing else does. */
  public Correction turned() {
    return withPersons(new Persons(persons.smaller(), persons.larger()));
  }
}
