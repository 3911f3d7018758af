package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;

/** One story told in one way, with all that a law needs to judge it. */
record Telling(Scenario scenario, Scene scene, Comparison story, Shape shape, WrittenText english, WrittenText spanish,
    long seed) {

  /** Every unknown with every wording that goes with it. */
  static final List<Asked> ALL_ASKED = List.of(
      new Asked(Role.LARGER, Wording.MORE), new Asked(Role.LARGER, Wording.FEWER),
      new Asked(Role.SMALLER, Wording.MORE), new Asked(Role.SMALLER, Wording.FEWER),
      new Asked(Role.DIFFERENCE, Wording.MORE), new Asked(Role.DIFFERENCE, Wording.FEWER),
      new Asked(Role.DIFFERENCE, Wording.DIFFERENCE));

  record Asked(Role unknown, Wording wording) {}

  /** Every scenario, unknown, wording and shape, once for each seed; returns how many were told. */
  static int forEach(int seeds, Consumer<Telling> check) {
    int count = 0;
    for (Scenario scenario : Lexicon.scenarios()) {
      for (long seed = 0; seed < seeds; seed++) {
        Random random = new Random(seed * 1_000_003 + scenario.id().hashCode());
        for (Telling plain : oneOfEachKind(scenario, random, seed)) {
          for (Shape shape : WordingWriter.shapes(plain.story, plain.scene)) {
            check.accept(tell(scenario, plain.scene, plain.story, shape, seed));
            count++;
          }
        }
      }
    }
    return count;
  }

  /** One story for every unknown and wording, with one cast, in shapes drawn by chance. */
  static List<Telling> oneOfEachKind(Scenario scenario, Random random, long seed) {
    Scene scene = Lexicon.scene(scenario, random, List.of(), Set.of()).orElseThrow();
    List<Telling> tellings = new ArrayList<>();
    for (Asked asked : ALL_ASKED) {
      int smaller = 1 + random.nextInt(60);
      int difference = 1 + random.nextInt(39);
      Comparison story = scene.story(new Relation(smaller + difference, smaller, difference), asked.unknown(),
          asked.wording());
      tellings.add(tell(scenario, scene, story, Shape.draw(random), seed));
    }
    return tellings;
  }

  private static Telling tell(Scenario scenario, Scene scene, Comparison story, Shape shape, long seed) {
    return new Telling(scenario, scene, story, shape, WordingWriter.english(story, scene, shape),
        (WrittenText) WordingWriter.write(story, scene, Language.SPANISH, shape), seed);
  }

  @Override
  public String toString() {
    return scenario.id() + " " + story.unknown() + " " + story.wording() + " " + shape + " seed " + seed + "\n"
        + english.text() + "\n" + spanish.text();
  }
}
