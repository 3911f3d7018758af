package fewermore.marking;

import fewermore.story.Comparison;
import fewermore.story.Persons;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;

/** Seeded stories, and lines that children might write for them: right ones, near ones and odd ones. */
final class RandomEquations {
  private final Random random;

  RandomEquations(long seed) {
    this.random = new Random(seed);
  }

  static Comparison story(int larger, int smaller, Role unknown, Wording wording, List<Integer> extras) {
    return new Comparison(new Persons("Tomas", "Ines"), new Thing("shell", "shells"), null, List.of(),
        new Relation(larger, smaller, larger - smaller), unknown, wording, extras);
  }

  Comparison story() {
    int larger = random.nextInt(10) == 0 ? 2 + random.nextInt(18) : 12 + random.nextInt(88);
    int smaller = random.nextInt(20) == 0 ? larger / 2 : 1 + random.nextInt(larger - 1);
    Role unknown = Role.values()[random.nextInt(3)];
    Wording wording = Wording.values()[random.nextInt(unknown == Role.DIFFERENCE ? 3 : 2)];
    return story(larger, smaller, unknown, wording,
        random.nextInt(3) == 0 ? List.of(2 + random.nextInt(12)) : List.of());
  }

  String line(Comparison story) {
    int one = story.value(story.given().get(0));
    int two = story.value(story.given().get(1));
    if (random.nextInt(8) == 0) {
      two = miscopied(two);
    }
    return switch (random.nextInt(10)) {
      case 0 -> sidesOf(story, 2);
      case 1 -> random.nextInt(3) == 0 ? sidesOf(story, 1) : sidesOf(story, 3 + random.nextInt(2));
      case 2, 3 -> threeQuantities(story, one, two, true);
      case 4, 5, 6 -> threeQuantities(story, one, two, false);
      case 7 -> runOn(one, two, story.answer());
      case 8 -> jumps(one, two);
      default -> partialSums(one, two);
    };
  }

  /** Any terms from a bowl of numbers that belong near the story. */
  private String sidesOf(Comparison story, int count) {
    List<String> sides = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int terms = 1 + random.nextInt(count > 2 ? 2 : 3);
      StringBuilder side = new StringBuilder(term(story));
      for (int j = 1; j < terms; j++) {
        side.append(sign()).append(term(story));
      }
      sides.add(side.toString());
    }
    return String.join(" = ", sides);
  }

  private String term(Comparison story) {
    int given = story.value(story.given().get(random.nextInt(2)));
    return switch (random.nextInt(10)) {
      case 0, 1, 2, 3 -> Integer.toString(given);
      case 4, 5 -> "x";
      case 6 -> Integer.toString(story.answer());
      case 7 -> Integer.toString(given / 10 * 10);
      case 8 -> Integer.toString(story.extras().isEmpty() ? given % 10 : story.extras().get(0));
      default -> Integer.toString(random.nextInt(100));
    };
  }

  /** One of the many ways to order two given numbers and the unknown, some of them split. */
  private String threeQuantities(Comparison story, int one, int two, boolean whole) {
    String result = switch (random.nextInt(5)) {
      case 0 -> Integer.toString(story.answer());
      case 1 -> Integer.toString(random.nextInt(120));
      case 2 -> random.nextInt(3) == 0 ? Integer.toString(one) : "x";
      default -> whole || random.nextInt(3) > 0 ? "x" : split(story.answer());
    };
    List<String> three = new ArrayList<>(List.of(
        whole ? Integer.toString(one) : split(one), whole ? Integer.toString(two) : split(two), result));
    java.util.Collections.shuffle(three, random);
    String twoOfThem = three.get(0) + sign() + (random.nextInt(5) == 0 ? "(" + three.get(1) + ")" : three.get(1));
    return random.nextBoolean() ? twoOfThem + " = " + three.get(2) : three.get(2) + " = " + twoOfThem;
  }

  private String split(int number) {
    int part = random.nextBoolean() ? number / 10 * 10 : random.nextInt(number + 1);
    int rest = number - part + (random.nextInt(6) == 0 ? 1 : 0);
    return switch (random.nextInt(5)) {
      case 0, 1 -> part + " + " + rest;
      case 2 -> (number + 3) + " - 3";
      case 3 -> part + " - " + rest;
      default -> Integer.toString(number);
    };
  }

  private String runOn(int one, int two, int answer) {
    String operation = sign();
    int way = operation.equals(" + ") ? 1 : -1;
    int part = random.nextBoolean() ? two / 10 * 10 : random.nextInt(two + 1);
    int first = one + way * part + (random.nextInt(5) == 0 ? 1 : 0);
    String line = one + operation + part + " = " + Math.max(first, 0) + operation + (two - part);
    String checked = one + operation + two + " = " + Math.max(0, one + way * two)
        + (way > 0 ? " - " : " + ") + two;
    return switch (random.nextInt(8)) {
      case 0 -> line;
      case 1 -> line + " = x";
      case 2 -> "x = " + line;
      case 3 -> line + " =";
      case 4 -> checked + (random.nextBoolean() ? " = " + one : "");
      case 5 -> one + operation + two + " = " + split(answer) + " = " + answer;
      case 6 -> line + " = " + random.nextInt(100);
      default -> line + " = " + Math.max(0, one + way * two);
    };
  }

  private String jumps(int one, int two) {
    int from = Math.min(one, two);
    int to = Math.max(one, two);
    boolean up = random.nextInt(3) > 0;
    int start = up ? from : to;
    int end = up ? to : from;
    List<String> steps = new ArrayList<>();
    int here = start;
    boolean chain = random.nextBoolean();
    StringBuilder line = new StringBuilder(Integer.toString(start));
    for (int i = 0; i < 3 && here != end; i++) {
      int far = Math.abs(end - here);
      int jump = i == 2 ? far : Math.min(far, random.nextBoolean() ? 10 : 1 + random.nextInt(20));
      jump += random.nextInt(10) == 0 ? 1 : 0;
      if (chain && i > 0) {
        line.append(" = ").append(here);
      }
      line.append(up ? " + " : " - ").append(jump);
      here = Math.max(0, here + (up ? jump : -jump));
      steps.add(Integer.toString(jump));
    }
    return line + (random.nextInt(3) == 0 ? "" : " = " + (random.nextInt(8) == 0 ? "x" : Integer.toString(end)));
  }

  private String partialSums(int one, int two) {
    int tens = one / 10 * 10 + two / 10 * 10 + (random.nextInt(6) == 0 ? 10 : 0);
    int ones = one % 10 + two % 10 + (random.nextInt(6) == 0 ? 1 : 0);
    String last = List.of(" = " + (tens + ones), " = x", "", " = 81").get(random.nextInt(4));
    return random.nextBoolean()
        ? one / 10 * 10 + " + " + two / 10 * 10 + " = " + tens + " + " + ones + last
        : one % 10 + " + " + two % 10 + " = " + ones + " + " + tens + last;
  }

  private int miscopied(int number) {
    List<Integer> wrong = SlowEquationMarker.miscopies(number).stream().sorted().collect(Collectors.toList());
    return wrong.get(random.nextInt(wrong.size()));
  }

  private String sign() {
    return random.nextInt(5) < 2 ? " + " : " - ";
  }
}
