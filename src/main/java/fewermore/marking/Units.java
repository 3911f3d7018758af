package fewermore.marking;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * Units of measure of the early grades with their usual short forms (common practice, no source). Short
 * forms are taken as they stand, never as a misspelling.
 */
final class Units {
  private static final Map<String, Set<String>> SHORT_FORMS = new HashMap<>();

  static {
    unit("inch", "inches", "in", "ins", "\"", "″");
    unit("foot", "feet", "ft", "'", "′");
    unit("yard", "yards", "yd", "yds");
    unit("mile", "miles", "mi");
    unit("millimeter", "millimeters", "mm");
    unit("centimeter", "centimeters", "cm", "cms");
    unit("meter", "meters", "m");
    unit("kilometer", "kilometers", "km", "kms");
    unit("ounce", "ounces", "oz");
    unit("pound", "pounds", "lb", "lbs");
    unit("gram", "grams", "g");
    unit("kilogram", "kilograms", "kg", "kgs");
    unit("cup", "cups", "c");
    unit("pint", "pints", "pt", "pts");
    unit("quart", "quarts", "qt", "qts");
    unit("gallon", "gallons", "gal", "gals");
    unit("milliliter", "milliliters", "ml");
    unit("liter", "liters", "l");
    unit("second", "seconds", "sec", "secs", "s");
    unit("minute", "minutes", "min", "mins");
    unit("hour", "hours", "hr", "hrs", "h");
    unit("day", "days");
    unit("week", "weeks", "wk", "wks");
    unit("month", "months", "mo", "mos");
    unit("year", "years", "yr", "yrs");
    unit("dollar", "dollars", "$");
    unit("cent", "cents", "¢", "c");
    unit("degree", "degrees", "°", "deg");
  }

  private static final Set<String> ALL_SHORT =
      Set.copyOf(SHORT_FORMS.values().stream().flatMap(Set::stream).collect(java.util.stream.Collectors.toSet()));

  private Units() {}

  /** The short forms of a unit given in full, one or many; none for what is no unit. */
  static Set<String> shortForms(String word) {
    return SHORT_FORMS.getOrDefault(word, Set.of());
  }

  static boolean isUnit(String word) {
    return SHORT_FORMS.containsKey(word);
  }

  static boolean isShortForm(String word) {
    return ALL_SHORT.contains(word);
  }

  private static void unit(String one, String many, String... shortForms) {
    SHORT_FORMS.put(one, Set.of(shortForms));
    SHORT_FORMS.put(many, Set.of(shortForms));
  }
}
