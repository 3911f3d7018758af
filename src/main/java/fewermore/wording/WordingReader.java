package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Wording;
import fewermore.text.SourceSpan;
import fewermore.wording.ReadText.Declined;
import fewermore.wording.ReadText.Part;
import fewermore.wording.ReadText.Place;
import fewermore.wording.ReadText.Reason;
import fewermore.wording.ReadText.Understood;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * From a teacher's typed English to the story. It never guesses: what is not clearly one comparison within its reach
 * is declined with the reason and the place.
 */
public final class WordingReader {
  /** Longer than any problem: the longest of our own texts has some 200 characters. */
  public static final int LONGEST = 2_000;

  private WordingReader() {}

  /** Reads one problem. Never fails, whatever the text holds. */
  public static ReadText read(String text) {
    return TextReading.of(text);
  }

  /** A problem among several and where it stands in their text; places inside {@code read} count from its start. */
  public record Paragraph(SourceSpan at, ReadText read) {}

  /** Reads several problems: one a paragraph, parted by empty lines; or one a line where every line asks. */
  public static List<Paragraph> readAll(String text) {
    return Paragraphs.of(text).stream().map(at -> new Paragraph(at, read(at.of(text)))).toList();
  }

  /**
   * The story with the roles a teacher set by hand.
   *
   * @return {@link Understood} with {@code byHand}, or {@link Declined} with {@link Reason#ROLES} saying what is
   *     missing or does not fit
   */
  public static ReadText corrected(ReadText read, Correction correction) {
    Map<Role, Integer> given = new EnumMap<>(Role.class);
    List<Integer> extras = new ArrayList<>();
    List<Place> places = new ArrayList<>();
    if (correction.numbers().size() != read.numbers().size()) {
      throw new IllegalArgumentException("a use for each of " + read.numbers().size() + " numbers was expected");
    }
    for (int i = 0; i < read.numbers().size(); i++) {
      ReadText.NumberInText number = read.numbers().get(i);
      Correction.Use use = correction.numbers().get(i);
      places.add(new Place(part(use), number.at()));
      if (use == Correction.Use.EXTRA) {
        extras.add(number.value());
      } else if (given.put(use.role().orElseThrow(), number.value()) != null) {
        return roles(read, number.at(), "Two numbers are the " + use.id() + ".", "One was expected.",
            "Say of one of them that it is something else.");
      }
    }
    if (correction.unknown() == null) {
      return roles(read, whole(read), "It is not said what is asked.", "One of the three quantities is asked.",
          "Say whether the larger, the smaller or the difference is asked.");
    }
    if (given.containsKey(correction.unknown())) {
      return roles(read, whole(read), "The " + correction.unknown().id() + " is asked and has a number.",
          "The number asked for is not in the text.", "Say of that number that it is something else.");
    }
    if (given.size() != 2) {
      return roles(read, whole(read), "The comparison has " + (given.size() == 1 ? "one number." : "no number."),
          "Two known numbers were expected.", "Say which two numbers the comparison has.");
    }
    Wording wording = correction.wording();
    if (wording == null || wording == Wording.DIFFERENCE && correction.unknown() != Role.DIFFERENCE) {
      return roles(read, whole(read), "It is not said how the text compares.", "It says more, fewer, or difference; "
          + "the word difference alone goes with the difference asked.", "Say which word the text has.");
    }
    if (correction.thing() == null) {
      return roles(read, whole(read), "It is not said what the answer counts.", "A thing, one and many, was expected.",
          "Give both, for example: shell, shells.");
    }
    String larger = correction.persons().larger();
    if (larger != null && larger.equalsIgnoreCase(correction.persons().smaller())) {
      return roles(read, whole(read), larger + " has both amounts.", "Two different holders were expected.",
          "Give the other one's name.");
    }
    int whole = given.containsKey(Role.LARGER)
        ? given.get(Role.LARGER) : given.get(Role.SMALLER) + given.get(Role.DIFFERENCE);
    int part = given.containsKey(Role.SMALLER) ? given.get(Role.SMALLER) : whole - given.get(Role.DIFFERENCE);
    if (part < 0 || part > whole) {
      return roles(read, whole(read), "The larger number is below the other.",
          "The larger is the smaller and the difference together.", "Turn the two numbers round.");
    }
    Comparison story = new Comparison(correction.persons(), correction.thing(), correction.otherThing(),
        read instanceof Understood before ? before.story().wider() : List.of(),
        new Relation(whole, part, whole - part), correction.unknown(), wording, extras);
    if (read instanceof Understood before) {
      before.places().stream().filter(place -> place.part() == Part.QUESTION || place.part() == Part.COMPARING_WORD)
          .forEach(places::add);
      addHolders(places, before, story);
      addThings(places, before, story);
    }
    places.sort(Comparator.comparingInt(place -> place.at().start()));
    return new Understood(read.text(), story, places, read.numbers(), read.holders(), read.nouns(), true);
  }

  private static void addHolders(List<Place> places, Understood before, Comparison story) {
    boolean turned = before.story().persons().larger() != null
        && before.story().persons().larger().equals(story.persons().smaller());
    for (Place place : before.places()) {
      if (place.part() == Part.LARGER_HOLDER || place.part() == Part.SMALLER_HOLDER) {
        boolean larger = place.part() == Part.LARGER_HOLDER != turned;
        places.add(new Place(larger ? Part.LARGER_HOLDER : Part.SMALLER_HOLDER, place.at()));
      }
    }
  }

  private static void addThings(List<Place> places, Understood before, Comparison story) {
    boolean turned = story.thing().equals(before.story().otherThing());
    for (Place place : before.places()) {
      if (place.part() == Part.THING || place.part() == Part.OTHER_THING) {
        boolean thing = place.part() == Part.THING != turned;
        places.add(new Place(thing ? Part.THING : Part.OTHER_THING, place.at()));
      }
    }
  }

  private static Part part(Correction.Use use) {
    return switch (use) {
      case LARGER -> Part.LARGER;
      case SMALLER -> Part.SMALLER;
      case DIFFERENCE -> Part.DIFFERENCE;
      case EXTRA -> Part.EXTRA;
    };
  }

  private static SourceSpan whole(ReadText read) {
    return new SourceSpan(0, read.text().length());
  }

  private static Declined roles(ReadText read, SourceSpan at, String found, String expected, String advice) {
    return new Declined(read.text(), Reason.ROLES, List.of(at), found, expected, advice, read.numbers(),
        read.holders(), read.nouns());
  }
}
