package fewermore.marking;

import fewermore.story.Comparison;
import fewermore.story.Role;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Marks the bars: which is longer, and what stands on each place. The true number of the unknown may stand
 * wherever its sign would.
 */
public final class BarsMarker {
  private BarsMarker() {}

  public static BarsVerdict mark(Comparison story, Bars bars) {
    if (Visible.blank(bars.longer() + bars.longerBar() + bars.shorterBar() + bars.gap())) {
      return BarsVerdict.BLANK;
    }
    return new Drawing(story, bars).verdict();
  }

  /**
   * The name that a bar of this story goes by, as {@link Bars#longer()} gives it: the person's, or when the
   * story names nobody, the kind's ("striped shells"); else {@code larger} or {@code smaller}.
   */
  public static String name(Comparison story, Role role) {
    String person = role == Role.LARGER ? story.persons().larger() : story.persons().smaller();
    if (person != null) {
      return person;
    }
    if (story.otherThing() == null || story.unknown() == Role.DIFFERENCE) {
      return role.id();
    }
    return role == story.unknown() ? story.thing().many() : story.otherThing().many();
  }

  /** Whether the bar drawn longer is the story's longer one, whatever stands on the bars. */
  static boolean longerIsRight(Comparison story, Bars bars) {
    return Drawing.whose(story, bars.longer()).equals(Optional.of(Role.LARGER));
  }

  /** One child's bars beside the story's, each rule in the order in which they are tried. */
  private static final class Drawing {
    private final Comparison story;
    private final Optional<Role> longer;
    private final Map<Role, Place> places = new EnumMap<>(Role.class);

    Drawing(Comparison story, Bars bars) {
      this.story = story;
      this.longer = whose(story, bars.longer());
      places.put(Role.LARGER, Place.of(bars.longerBar()));
      places.put(Role.SMALLER, Place.of(bars.shorterBar()));
      places.put(Role.DIFFERENCE, Place.of(bars.gap()));
    }

    private static Optional<Role> whose(Comparison story, String written) {
      String seen = Visible.of(written);
      for (Role role : new Role[] {Role.LARGER, Role.SMALLER}) {
        if (seen.equalsIgnoreCase(Visible.of(name(story, role)))) {
          return Optional.of(role);
        }
      }
      return Optional.empty();
    }

    BarsVerdict verdict() {
      if (longer.equals(Optional.of(Role.LARGER)) && all(Role.LARGER, Role.SMALLER, Role.DIFFERENCE)) {
        return BarsVerdict.FITS;
      }
      if (longer.equals(Optional.of(Role.SMALLER)) || longer.isPresent() && amountsExchanged()) {
        return BarsVerdict.LONGER_SHORTER_SWAPPED;
      }
      if (onBarNotItsOwn(Role.DIFFERENCE, Role.LARGER) || onBarNotItsOwn(Role.DIFFERENCE, Role.SMALLER)) {
        return BarsVerdict.DIFFERENCE_AS_AMOUNT;
      }
      if (unknownElsewhere()) {
        return BarsVerdict.UNKNOWN_MISPLACED;
      }
      if (places.values().stream().anyMatch(this::holdsForeignNumber)) {
        return BarsVerdict.OTHER_NUMBERS;
      }
      return BarsVerdict.INCOMPLETE;
    }

    private boolean all(Role... roles) {
      for (Role role : roles) {
        if (!holds(role, role)) {
          return false;
        }
      }
      return true;
    }

    /** Whether a place shows the quantity of a role, by its number or, for the unknown, by the sign. */
    private boolean holds(Role place, Role role) {
      Place there = places.get(place);
      return there.sign() ? role == story.unknown() : there.is(story.value(role));
    }

    private boolean amountsExchanged() {
      return story.value(Role.LARGER) != story.value(Role.SMALLER)
          && holds(Role.LARGER, Role.SMALLER) && holds(Role.SMALLER, Role.LARGER);
    }

    /** By number only: the unknown sign on a bar is a misplaced unknown. */
    private boolean onBarNotItsOwn(Role role, Role bar) {
      return places.get(bar).is(story.value(role)) && story.value(role) != story.value(bar);
    }

    private boolean unknownElsewhere() {
      for (Role place : Role.values()) {
        if (place != story.unknown()
            && (places.get(place).sign() || places.get(place).is(story.answer())
                && story.answer() != story.value(place) && !isGiven(story.answer()))) {
          return true;
        }
      }
      return false;
    }

    private boolean isGiven(int number) {
      return story.given().stream().anyMatch(role -> story.value(role) == number);
    }

    private boolean holdsForeignNumber(Place place) {
      return !place.empty() && !place.sign() && !place.is(story.value(Role.LARGER))
          && !place.is(story.value(Role.SMALLER)) && !place.is(story.value(Role.DIFFERENCE));
    }
  }

  /** What stands on one place: nothing, the unknown sign, a number, or something that is no number. */
  private record Place(boolean empty, boolean sign, OptionalInt number) {
    static Place of(String written) {
      String seen = Visible.of(written);
      return new Place(seen.isEmpty(), isSign(seen), Visible.number(seen));
    }

    private static boolean isSign(String seen) {
      return seen.length() == 1 && (seen.equals("?") || seen.equals("□") || seen.equals("_")
          || Character.isLetter(seen.charAt(0)));
    }

    boolean is(int value) {
      return number.isPresent() && number.getAsInt() == value;
    }
  }
}
