package fewermore.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import fewermore.wording.ReadText.Understood;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * Good problems with one thing changed: a word dropped, doubled or changed round with another, a number or a name
 * changed. Whatever is still understood must not contradict the changed text.
 *
 * <p>How that is checked: a second, naive reading knows no grammar. It splits the changed text at full stops and
 * question marks and looks, with patterns, at the three sentences that hold the numbers and the question: every number
 * of the text is in the story once and no other; the sentence with the difference has the number before a comparing
 * word of the story's wording and names its two sides before and after <i>than</i> in the wording's order; the sentence
 * of a known amount names its holder or kind and does not compare; the question names what is asked.
 */
class MutatedTextTest {
  private static final Pattern NUMBER = Pattern.compile("\\d+");
  private static final String MORE = "\\b(?:more|longer|taller|older)\\b";
  private static final String FEWER = "\\b(?:fewer|less|shorter|younger)\\b";
  private static final List<String> OTHER_NAMES = List.of("Pia", "Gus", "Tomas", "Ines");

  @Test
  void nothingUnderstoodContradictsTheChangedText() {
    List<Telling> good = new ArrayList<>();
    Telling.forEach(1, good::add);
    List<String> contradictions = new ArrayList<>();
    int[] understood = {0};
    for (long seed = 0; seed < 20_000; seed++) {
      Random random = new Random(seed * 7_919 + 1);
      Telling telling = good.get(random.nextInt(good.size()));
      String changed = changed(telling, random);
      String about = "seed " + seed + ": " + changed + "\nfrom " + telling.english().text();
      ReadText read = WordingReader.read(changed);
      if (read instanceof Understood story) {
        understood[0]++;
        String contradiction = contradiction(changed, story.story());
        if (contradiction != null) {
          contradictions.add(contradiction + " " + about + "\n" + story.story());
        }
      }
    }
    assertEquals(List.of(), contradictions);
    assertTrue(understood[0] >= 4_000, "only " + understood[0] + " were still understood: too few to say anything");
    assertTrue(understood[0] <= 15_000, understood[0] + " were still understood: the changes change nothing");
  }

  /** The check itself fails when a story has its persons, its roles or a number wrong. */
  @Test
  void theSecondReadingFindsEveryRoleThatIsTurnedRound() {
    int[] checked = {0};
    Telling.forEach(1, telling -> {
      Comparison story = telling.story();
      String text = telling.english().text();
      assertNull(contradiction(text, story), telling::toString);
      assertNotNull(contradiction(text, turned(story)), telling::toString);
      checked[0]++;
    });
    assertTrue(checked[0] >= 2_700);
  }

  /** What in the story contradicts the text, or null. */
  private static String contradiction(String text, Comparison story) {
    return new SecondReading(text, story).contradiction();
  }

  private static Comparison turned(Comparison story) {
    return new Comparison(new fewermore.story.Persons(story.persons().smaller(), story.persons().larger()),
        story.thing(), story.otherThing(), story.wider(), story.amounts(), story.unknown(), story.wording(),
        story.extras());
  }

  private static String changed(Telling telling, Random random) {
    List<String> words = new ArrayList<>(Arrays.asList(telling.english().text().split(" ")));
    int at = random.nextInt(words.size());
    switch (random.nextInt(6)) {
      case 0:
        words.remove(at);
        break;
      case 1:
        words.add(at, words.get(at));
        break;
      case 2:
        int other = random.nextInt(words.size());
        String kept = words.get(at);
        words.set(at, words.get(other));
        words.set(other, kept);
        break;
      case 3:
        if (at + 1 < words.size()) {
          words.add(at + 1, words.remove(at));
        }
        break;
      case 4:
        return withAnotherNumber(telling.english().text(), random);
      default:
        return withAnotherName(telling, random);
    }
    return String.join(" ", words);
  }

  private static String withAnotherNumber(String text, Random random) {
    List<Integer> starts = new ArrayList<>();
    Matcher matcher = NUMBER.matcher(text);
    while (matcher.find()) {
      starts.add(matcher.start());
    }
    int start = starts.get(random.nextInt(starts.size()));
    String digits = NUMBER.matcher(text.substring(start)).results().findFirst().orElseThrow().group();
    return text.substring(0, start) + random.nextInt(100) + text.substring(start + digits.length());
  }

  /** One place of one name; by another name, or by the other holder's. */
  private static String withAnotherName(Telling telling, Random random) {
    List<Holder> holders = telling.scene().holders();
    if (holders.isEmpty()) {
      return telling.english().text().replaceFirst("there|There", "Pia has");
    }
    String name = holders.get(random.nextInt(holders.size())).english();
    String other = random.nextBoolean() && holders.size() > 1
        ? holders.get(holders.get(0).english().equals(name) ? 1 : 0).english()
        : OTHER_NAMES.get(random.nextInt(OTHER_NAMES.size()));
    List<Integer> starts = new ArrayList<>();
    Matcher matcher = Pattern.compile("\\b" + name + "\\b").matcher(telling.english().text());
    while (matcher.find()) {
      starts.add(matcher.start());
    }
    if (starts.isEmpty()) {
      return telling.english().text();
    }
    int start = starts.get(random.nextInt(starts.size()));
    return telling.english().text().substring(0, start) + other
        + telling.english().text().substring(start + name.length());
  }

  /** The naive reading of a text beside the story that was read from it. */
  private static final class SecondReading {
    private final String text;
    private final Comparison story;
    private final boolean kinds;

    private SecondReading(String text, Comparison story) {
      this.text = text;
      this.story = story;
      this.kinds = story.otherThing() != null;
    }

    private String contradiction() {
      if (!numbersOfStory().equals(numbersOfText())) {
        return "numbers";
      }
      for (Role role : story.given()) {
        if (sentencesWith(story.value(role)).stream()
            .noneMatch(sentence -> role == Role.DIFFERENCE ? compares(sentence) : tells(sentence, role))) {
          return role.id();
        }
      }
      boolean asked = Arrays.stream(text.split("(?<=[.?!])")).filter(sentence -> sentence.matches("(?s)\\s*(?:How|What) .*|.*\\?.*"))
          .anyMatch(this::asks);
      if (!asked) {
        return "question";
      }
      return says(text, story.thing()) ? null : "thing";
    }

    private List<Integer> numbersOfText() {
      return NUMBER.matcher(text).results().map(found -> Integer.parseInt(found.group())).sorted().toList();
    }

    private List<Integer> numbersOfStory() {
      List<Integer> numbers = new ArrayList<>(story.extras());
      story.given().forEach(role -> numbers.add(story.value(role)));
      return numbers.stream().sorted().toList();
    }

    private List<String> sentencesWith(int number) {
      return Arrays.stream(text.split("(?<=[.?!])"))
          .filter(sentence -> Pattern.compile("\\b" + number + "\\b").matcher(sentence).find()).toList();
    }

    private boolean compares(String sentence) {
      String word = story.wording() == Wording.MORE ? MORE : FEWER;
      int than = sentence.indexOf(" than ");
      boolean worded = Pattern.compile("\\b" + story.value(Role.DIFFERENCE) + " (?:\\w+ )?" + word).matcher(sentence)
          .find();
      boolean opposite = Pattern.compile(story.wording() == Wording.MORE ? FEWER : MORE).matcher(sentence).find();
      Role first = story.wording() == Wording.MORE ? Role.LARGER : Role.SMALLER;
      // Without "than" only the first side is named.
      String before = than < 0 ? sentence : sentence.substring(0, than);
      String after = than < 0 ? "" : sentence.substring(than);
      boolean firstNamed = names(before, first) || before.matches("(?s)\\s*(?:She|He|It) .*") && !kinds;
      return worded && !opposite && firstNamed && (than < 0 ? story.wording() == Wording.FEWER || word(before)
          : names(after, other(first)) && !names(after, first));
    }

    private static boolean word(String before) {
      return Pattern.compile("\\b(?:longer|taller|older)\\b").matcher(before).find();
    }

    private boolean tells(String sentence, Role role) {
      boolean compares = Pattern.compile(MORE + "|" + FEWER + "|\\bthan\\b").matcher(sentence).find();
      return !compares && names(sentence, role) && !names(sentence, other(role));
    }

    private boolean asks(String sentence) {
      if (story.unknown() != Role.DIFFERENCE) {
        boolean compares = Pattern.compile(MORE + "|" + FEWER).matcher(sentence).find();
        return !compares && names(sentence, story.unknown()) && !names(sentence, other(story.unknown()));
      }
      if (story.wording() == Wording.DIFFERENCE) {
        return sentence.contains("difference");
      }
      boolean worded = Pattern.compile(story.wording() == Wording.MORE ? MORE : FEWER).matcher(sentence).find();
      Role first = story.wording() == Wording.MORE ? Role.LARGER : Role.SMALLER;
      int than = sentence.indexOf(" than ");
      if (than < 0) {
        return worded && names(sentence, first) && !names(sentence, other(first));
      }
      String before = sentence.substring(0, than);
      return worded && names(before, first) && !names(before, other(first))
          && names(sentence.substring(than), other(first));
    }

    private static Role other(Role role) {
      return role == Role.LARGER ? Role.SMALLER : Role.LARGER;
    }

    private boolean names(String part, Role role) {
      String name = role == Role.LARGER ? story.persons().larger() : story.persons().smaller();
      if (name == null) {
        return false;
      }
      if (kinds && (story.thing().many().equals(name) || story.otherThing().many().equals(name))) {
        return says(part, story.thing().many().equals(name) ? story.thing() : story.otherThing());
      }
      String bare = name.replaceFirst("^(the|a|an) ", "");
      return Pattern.compile("\\b" + Pattern.quote(bare) + "(?:'s)?(?![\\w'])", Pattern.CASE_INSENSITIVE)
          .matcher(part).find();
    }

    private static boolean says(String part, Thing thing) {
      return Pattern.compile("\\b(?:" + Pattern.quote(thing.one()) + "|" + Pattern.quote(thing.many()) + ")\\b")
          .matcher(part).find();
    }
  }
}
