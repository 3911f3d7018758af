package fewermore.story;

import java.util.List;
import java.util.Objects;

/**
 * The story of a comparison problem: what marking, prediction and pictures are computed from. It holds
 * no English but the names of persons and things.
 *
 * @param persons who has more and who has fewer
 * @param thing what the <em>answer</em> counts
 * @param otherThing the other kind it is compared with ("plain shell"), or null
 * @param wider words too general to name the thing ("animal" for a bear); may be empty
 * @param amounts the three quantities as larger = smaller + difference, all known
 * @param unknown the one that is asked
 * @param wording what the comparing sentence says
 * @param extras numbers in the text that do not belong to the comparison; may be empty
 */
public record Comparison(
    Persons persons,
    Thing thing,
    Thing otherThing,
    List<Thing> wider,
    Relation amounts,
    Role unknown,
    Wording wording,
    List<Integer> extras) {

  public Comparison {
    Objects.requireNonNull(persons);
    Objects.requireNonNull(thing);
    Objects.requireNonNull(amounts);
    Objects.requireNonNull(unknown);
    Objects.requireNonNull(wording);
    wider = List.copyOf(wider);
    extras = List.copyOf(extras);
    if (wording == Wording.DIFFERENCE && unknown != Role.DIFFERENCE) {
      throw new IllegalArgumentException("\"what is the difference\" asks for the difference");
    }
  }

  /** The value of a quantity, given or not. */
  public int value(Role role) {
    return switch (role) {
      case LARGER -> amounts.total();
      case SMALLER -> amounts.firstPart();
      case DIFFERENCE -> amounts.secondPart();
    };
  }

  /** The two given roles, in the order larger, smaller, difference. */
  public List<Role> given() {
    return switch (unknown) {
      case LARGER -> List.of(Role.SMALLER, Role.DIFFERENCE);
      case SMALLER -> List.of(Role.LARGER, Role.DIFFERENCE);
      case DIFFERENCE -> List.of(Role.LARGER, Role.SMALLER);
    };
  }

  /** The true value of the unknown. */
  public int answer() {
    return value(unknown);
  }

  public Kind kind() {
    return Kind.of(unknown, wording);
  }
}
