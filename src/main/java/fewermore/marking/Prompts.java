package fewermore.marking;

import fewermore.calculation.Working.Verdict;
import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.wording.Lexicon;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * What a child is told where to look again: one prompt a part whose sign is {@link Sign#LOOK_AGAIN}. A
 * prompt holds neither the answer nor the right equation nor the word for the label, and never the child's own
 * work, which may hold them. Texts come from the bundle {@code fewermore/marking/prompts}.
 */
public final class Prompts {
  private static final Pattern NOT_A_DIGIT = Pattern.compile("[^0-9]+");

  private Prompts() {}

  /**
   * The prompts by part, at most two, in the order of {@link Part}; none with {@code tellLater}.
   *
   * @param language English and Spanish are there; any other gets English
   */
  public static Map<Part, String> of(Comparison story, Work work, Marks marks, boolean tellLater, Locale language) {
    Map<Part, String> prompts = new EnumMap<>(Part.class);
    Signs.of(marks, tellLater).forEach((part, sign) -> {
      if (sign == Sign.LOOK_AGAIN) {
        prompts.put(part, of(story, work, marks, part, language));
      }
    });
    return prompts;
  }

  /** The prompt of one part that was asked and does not fit, whether or not a tablet is told. */
  static String of(Comparison story, Work work, Marks marks, Part part, Locale language) {
    Phrases phrases = Phrases.of("prompts", language);
    Map<String, String> places = new HashMap<>(places(story, language));
    places.put("look", phrases.say(marks.bars() == null ? "look.story" : "look.bars", Map.of()));
    return phrases.sayFirst(part.id() + "." + key(story, work, marks, part), places,
        text -> !tells(text, story.answer()));
  }

  /** Whether a text holds a number, alone or inside a name. */
  private static boolean tells(String text, int number) {
    return Arrays.asList(NOT_A_DIGIT.split(text)).contains(Integer.toString(number));
  }

  private static String key(Comparison story, Work work, Marks marks, Part part) {
    return switch (part) {
      case BARS -> marks.bars() == BarsVerdict.LONGER_SHORTER_SWAPPED && BarsMarker.longerIsRight(story, work.bars())
          ? "amounts-exchanged" : marks.bars().id();
      case EQUATION -> equationKey(story, marks);
      case ANSWER -> marks.answer().verdict() == AnswerVerdict.OTHER && Visible.number(work.answer()).isEmpty()
          ? "no-number" : marks.answer().verdict().id();
      case LABEL -> marks.label().id();
      case ESTIMATE -> marks.estimate().id();
      case STRATEGY -> marks.strategy().verdict().id()
          + (marks.strategy().verdict() == Verdict.SLIP ? "." + work.strategy().kind().id() : "");
      case READING -> throw new IllegalArgumentException("a reading has no prompt");
    };
  }

  private static String equationKey(Comparison story, Marks marks) {
    EquationMark mark = marks.equation();
    if (mark.reason() == EquationReason.BLANK) {
      return marks.bars() == BarsVerdict.FITS ? "blank.bars" : "blank.story";
    }
    if (mark.reason() == EquationReason.OPPOSITE_OPERATION && mark.cueLed()) {
      return story.unknown() == Role.DIFFERENCE ? "cue-led.question" : "cue-led.statement";
    }
    if (mark.reason() == EquationReason.UNREADABLE) {
      return mark.reason().id() + "." + mark.problem().kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
    return mark.reason().id();
  }

  private static String called(String name, Locale language) {
    return language.getLanguage().equals("es") ? Lexicon.inSpanish(name).orElse(name) : name;
  }

  private static Map<String, String> places(Comparison story, Locale language) {
    Map<String, String> places = new HashMap<>();
    if (story.persons().larger() != null && story.persons().smaller() != null) {
      List<String> names = List.of(story.persons().larger(), story.persons().smaller()).stream()
          .map(name -> called(name, language)).sorted().toList();
      places.put("a", names.get(0));
      places.put("b", names.get(1));
    }
    // The amount that the answer must lie above or below: the direction check of an estimate.
    places.put("amount", Integer.toString(EstimateMarker.amount(story)));
    if (story.unknown() != Role.DIFFERENCE) {
      places.put("difference", Integer.toString(story.value(Role.DIFFERENCE)));
    }
    return places;
  }
}
