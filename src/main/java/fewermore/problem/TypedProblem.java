package fewermore.problem;

import fewermore.story.Comparison;
import fewermore.story.Relation;
import fewermore.story.Role;
import fewermore.wording.Correction;
import fewermore.wording.Correction.Use;
import fewermore.wording.Holder;
import fewermore.wording.Language;
import fewermore.wording.Lexicon;
import fewermore.wording.Noun;
import fewermore.wording.ReadText;
import fewermore.wording.Shape;
import fewermore.wording.TeachersSpanish;
import fewermore.wording.TypedText;
import fewermore.wording.WordingWriter;
import fewermore.wording.Writing;
import fewermore.wording.WrittenText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** A teacher's own problem: her text, and the story it was understood to tell. */
public record TypedProblem(ReadText.Understood read) {
  /** The same Spanish for the same story, whenever it is asked for. */
  private static final long SEED = 1;

  public Comparison story() {
    return read.story();
  }

  /**
   * Her text as children read it, with the Spanish of the same story where it can be told.
   *
   * @param own Spanish she gave for words that are not ours
   */
  public Problem problem(TeachersSpanish own) {
    return new Problem(story(), null, 0, TypedText.of(read.text(), story().thing().many()),
        spanish(own) instanceof WrittenText text ? text : null);
  }

  /** The story in Spanish, or why it can't be told. */
  public Writing spanish(TeachersSpanish own) {
    return Lexicon.sceneOf(story(), new Random(SEED), own, read.text())
        .map(scene -> WordingWriter.write(story(), scene, Language.SPANISH, Shape.PLAIN))
        .orElseGet(() -> WordingWriter.write(story(), Language.SPANISH, new Random(SEED)));
  }

  /** Nouns of the story that have no Spanish of ours. */
  public List<Noun> nounsWithoutSpanish() {
    return Lexicon.sceneOf(story(), new Random(SEED)).map(scene -> scene.nouns().stream()
        .filter(noun -> !noun.hasSpanish()).distinct().toList()).orElse(List.of());
  }

  /** Who has an amount and has no Spanish of ours: neither a name nor a phrase we know. */
  public List<Holder> holdersWithoutSpanish() {
    return Lexicon.sceneOf(story(), new Random(SEED)).map(scene -> scene.holders().stream()
        .filter(holder -> holder.spanish() == null).distinct().toList()).orElse(List.of());
  }

  /** Her text with the numbers nearest to hers that tell more ways of going wrong apart; empty when hers do. */
  public Optional<String> withBetterNumbers() {
    return NumberChooser.better(story().amounts(), story().unknown()).map(this::with);
  }

  /** Her text with other amounts, in digits, in the places of the comparison's two numbers. */
  public String with(Relation amounts) {
    Comparison other = new Comparison(story().persons(), story().thing(), story().otherThing(), story().wider(), amounts,
        story().unknown(), story().wording(), story().extras());
    List<Use> uses = Correction.of(read).numbers();
    StringBuilder text = new StringBuilder(read.text());
    for (int i = read.numbers().size() - 1; i >= 0; i--) {
      Optional<Role> role = uses.get(i).role();
      if (role.isPresent()) {
        ReadText.NumberInText number = read.numbers().get(i);
        String was = number.at().of(read.text());
        String sign = was.startsWith("$") ? "$" : "";
        String after = was.endsWith("¢") ? "¢" : "";
        text.replace(number.at().start(), number.at().end(), sign + other.value(role.get()) + after);
      }
    }
    return text.toString();
  }

  /**
   * The roles that a story gives to the numbers of its text: where editing a problem begins.
   *
   * @param read the text as read again, understood or not
   */
  public static Correction roles(ReadText read, Comparison story) {
    List<Role> left = new ArrayList<>(story.given());
    List<Use> uses = new ArrayList<>();
    for (ReadText.NumberInText number : read.numbers()) {
      Optional<Role> role = left.stream().filter(each -> story.value(each) == number.value()).findFirst();
      role.ifPresent(left::remove);
      uses.add(role.flatMap(each -> Use.of(each.id())).orElse(Use.EXTRA));
    }
    return new Correction(uses, story.unknown(), story.wording(), story.persons(), story.thing(), story.otherThing());
  }
}
