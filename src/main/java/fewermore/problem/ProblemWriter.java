package fewermore.problem;

import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.story.Wording;
import fewermore.wording.Language;
import fewermore.wording.Lexicon;
import fewermore.wording.Scenario;
import fewermore.wording.Scene;
import fewermore.wording.Shape;
import fewermore.wording.WordingWriter;
import fewermore.wording.Writing;
import fewermore.wording.WrittenText;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/**
 * Writes problems from a seed: the same seed and wishes give the same problem, today and on another machine.
 *
 * @param avoidNames names no child in a problem may have, such as those of the class
 */
public record ProblemWriter(NumberRange range, Regrouping regrouping, Set<String> avoidNames) {
  public ProblemWriter {
    avoidNames = Set.copyOf(avoidNames);
  }

  /** One problem with any of our names. */
  public static Problem generate(Kind kind, NumberRange range, Regrouping regrouping, long seed) {
    return new ProblemWriter(range, regrouping, Set.of()).write(kind, seed);
  }

  /** One problem of that kind. */
  public Problem write(Kind kind, long seed) {
    return write(kind.unknown(), kind.wording(), seed);
  }

  /** One problem with that unknown and wording, "what is the difference" included. */
  public Problem write(Role unknown, Wording wording, long seed) {
    return write(unknown, wording, seed, new Used());
  }

  /**
   * A set of problems of these kinds, in this order, in which no scenario, child or pair of numbers comes twice while
   * others are left.
   */
  public ProblemSetDraft writeSet(List<Kind> kinds, long seed) {
    Used used = new Used();
    List<Problem> problems = new ArrayList<>();
    for (int i = 0; i < kinds.size(); i++) {
      Kind kind = kinds.get(i);
      problems.add(write(kind.unknown(), kind.wording(), seed + i * 0x9E3779B97F4A7C15L, used));
    }
    return new ProblemSetDraft(problems);
  }

  /** A set with so many problems of each kind, in the order of {@link ProposedMix#inOrder}. */
  public ProblemSetDraft writeSet(Map<Kind, Integer> counts, long seed) {
    return writeSet(ProposedMix.inOrder(counts), seed);
  }

  private Problem write(Role unknown, Wording wording, long seed, Used used) {
    Random random = new Random(scrambled(seed));
    Cast cast = cast(random, used);
    Relation amounts = NumberChooser.choose(unknown, range, regrouping, random, used.amounts).amounts();
    Comparison story = cast.scene.story(amounts, unknown, wording);
    Shape shape = Shape.draw(random);
    used.add(cast, amounts);
    return new Problem(story, cast.scenario.id(), seed, WordingWriter.english(story, cast.scene, shape),
        spanish(WordingWriter.write(story, cast.scene, Language.SPANISH, shape)));
  }

  private Cast cast(Random random, Used used) {
    List<Scenario> scenarios = new ArrayList<>(Lexicon.scenarios());
    scenarios.removeIf(scenario -> used.scenarios.contains(scenario.id()));
    if (scenarios.isEmpty()) {
      scenarios.addAll(Lexicon.scenarios());
    }
    while (true) {
      Scenario scenario = scenarios.remove(random.nextInt(scenarios.size()));
      Optional<Scene> scene = Lexicon.scene(scenario, random, avoidNames, used.names);
      if (scene.isPresent()) {
        return new Cast(scenario, scene.get());
      }
      if (scenarios.isEmpty()) {
        scenarios.addAll(Lexicon.scenarios());
      }
    }
  }

  private static WrittenText spanish(Writing writing) {
    return writing instanceof WrittenText text ? text : null;
  }

  /** The finalizer of SplitMix64 (Steele, Lea and Flood 2014): neighboring seeds start java.util.Random too alike. */
  private static long scrambled(long seed) {
    long z = (seed ^ (seed >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }

  private record Cast(Scenario scenario, Scene scene) {}

  /** What a set has used so far. */
  private static final class Used {
    private final Set<String> scenarios = new HashSet<>();
    private final Set<String> names = new HashSet<>();
    private final Set<Relation> amounts = new HashSet<>();

    void add(Cast cast, Relation numbers) {
      scenarios.add(cast.scenario.id());
      cast.scene.holders().forEach(holder -> names.add(holder.english()));
      amounts.add(numbers);
    }
  }
}
