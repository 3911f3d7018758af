package fewermore.reasoning;

import java.util.Optional;

/**
 * Where a child sits: what the group talks about, and which of the groups about it. No rank: the number only tells two
 * apart.
 *
 * @param number from 1; 1 for {@link Focus#ON_THEIR_OWN}
 */
public record GroupPlace(Focus focus, int number) implements Comparable<GroupPlace> {
  public static final GroupPlace ON_THEIR_OWN = new GroupPlace(Focus.ON_THEIR_OWN, 1);

  /** For example {@code who-has-more} and {@code who-has-more-2}. */
  public String id() {
    return number == 1 ? focus.id() : focus.id() + "-" + number;
  }

  public static Optional<GroupPlace> of(String id) {
    int dash = id.lastIndexOf('-');
    if (dash > 0 && id.length() == dash + 2 && id.charAt(dash + 1) >= '2' && id.charAt(dash + 1) <= '9') {
      int number = id.charAt(dash + 1) - '0';
      return Focus.of(id.substring(0, dash)).map(focus -> new GroupPlace(focus, number));
    }
    return Focus.of(id).map(focus -> new GroupPlace(focus, 1));
  }

  @Override
  public int compareTo(GroupPlace other) {
    return focus != other.focus ? focus.compareTo(other.focus) : Integer.compare(number, other.number);
  }
}
