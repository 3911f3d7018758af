package fewermore.wording;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Units of measure in full and short, with what they measure. */
final class UnitWords {

  /** What a unit measures. */
  enum Dimension { LENGTH, WEIGHT, TIME, MONEY, TEMPERATURE, CAPACITY }

  /** A unit: its noun and what it measures. */
  record Unit(Noun noun, Dimension dimension) {}

  private static final Map<String, Unit> BY_FORM = new HashMap<>();

  static {
    add(Units.INCH, Dimension.LENGTH, "in");
    add(Units.FOOT, Dimension.LENGTH, "ft");
    add(Units.YARD, Dimension.LENGTH, "yd", "yds");
    add(Units.MILE, Dimension.LENGTH, "mi");
    add(Units.CENTIMETER, Dimension.LENGTH, "cm");
    add(Units.METER, Dimension.LENGTH, "m");
    add(Units.KILOMETER, Dimension.LENGTH, "km");
    add(of("millimeter"), Dimension.LENGTH, "mm");
    add(Units.POUND, Dimension.WEIGHT, "lb", "lbs");
    add(Units.OUNCE, Dimension.WEIGHT, "oz");
    add(Units.GRAM, Dimension.WEIGHT, "g");
    add(Units.KILOGRAM, Dimension.WEIGHT, "kg");
    add(of("ton"), Dimension.WEIGHT);
    add(Units.SECOND, Dimension.TIME, "sec", "secs");
    add(Units.MINUTE, Dimension.TIME, "min", "mins");
    add(Units.HOUR, Dimension.TIME, "hr", "hrs");
    add(Units.DAY, Dimension.TIME);
    add(Units.WEEK, Dimension.TIME, "wk", "wks");
    add(of("month"), Dimension.TIME);
    add(Units.YEAR, Dimension.TIME, "yr", "yrs");
    add(Units.DOLLAR, Dimension.MONEY);
    add(Units.CENT, Dimension.MONEY);
    add(of("degree"), Dimension.TEMPERATURE);
    add(Units.LITER, Dimension.CAPACITY);
    add(Units.GALLON, Dimension.CAPACITY, "gal");
    add(of("quart"), Dimension.CAPACITY);
    add(of("pint"), Dimension.CAPACITY);
    add(of("milliliter"), Dimension.CAPACITY, "ml");
  }

  private UnitWords() {}

  /** The unit with this form, full or short. */
  static Optional<Unit> unit(String form) {
    return Optional.ofNullable(BY_FORM.get(form.endsWith(".") ? form.substring(0, form.length() - 1) : form));
  }

  private static Noun of(String one) {
    return Nouns.of(one).orElseGet(() -> new Noun(one, EnglishPlurals.many(one), null, null, null));
  }

  private static void add(Noun noun, Dimension dimension, String... shorts) {
    Unit unit = new Unit(noun, dimension);
    BY_FORM.put(noun.one(), unit);
    BY_FORM.put(noun.many(), unit);
    for (String form : shorts) {
      BY_FORM.put(form, unit);
    }
  }
}
