package fewermore.wording;

import static fewermore.wording.Nouns.noun;

/** The units of measure. */
final class Units {
  static final Noun INCH = noun("inch");
  static final Noun FOOT = noun("foot");
  static final Noun YARD = noun("yard");
  static final Noun CENTIMETER = noun("centimeter");
  static final Noun MILE = noun("mile");
  static final Noun POUND = noun("pound");
  static final Noun MINUTE = noun("minute");
  static final Noun DOLLAR = noun("dollar");
  static final Noun CENT = noun("cent");
  static final Noun YEAR = noun("year");
  static final Noun METER = noun("meter");
  static final Noun KILOMETER = noun("kilometer");
  static final Noun SECOND = noun("second");
  static final Noun HOUR = noun("hour");
  static final Noun DAY = noun("day");
  static final Noun WEEK = noun("week");
  static final Noun OUNCE = noun("ounce");
  static final Noun GRAM = noun("gram");
  static final Noun KILOGRAM = noun("kilogram");
  static final Noun LITER = noun("liter");
  static final Noun GALLON = noun("gallon");

  private Units() {}
}
