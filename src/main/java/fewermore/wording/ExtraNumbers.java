package fewermore.wording;

import fewermore.story.Comparison;
import java.util.ArrayList;
import java.util.List;

/** Sentences for the numbers that do not belong to a comparison: "Ines has 6 hats." where shells are compared. */
final class ExtraNumbers {
  private static final List<Noun> THINGS = List.of(
      new Noun("hat", "hats", "sombrero", "sombreros", Gender.MASCULINE),
      new Noun("chair", "chairs", "silla", "sillas", Gender.FEMININE),
      new Noun("pencil", "pencils", "lápiz", "lápices", Gender.MASCULINE),
      new Noun("window", "windows", "ventana", "ventanas", Gender.FEMININE));

  private ExtraNumbers() {}

  static List<Sentence> english(Comparison story, Scene scene) {
    List<Sentence> sentences = new ArrayList<>();
    for (int i = 0; i < story.extras().size(); i++) {
      int number = story.extras().get(i);
      Holder holder = holder(scene);
      Line line = holder == null
          ? new Line().say(number == 1 ? "there is" : "there are")
          : new Line().say(holder.english()).say(Verb.HAVE.told(holder));
      sentences.add(line.english(number).say(thing(scene, i).english(number)).statement());
    }
    return sentences;
  }

  static List<Sentence> spanish(Comparison story, Scene scene) {
    List<Sentence> sentences = new ArrayList<>();
    for (int i = 0; i < story.extras().size(); i++) {
      int number = story.extras().get(i);
      Holder holder = holder(scene);
      Noun thing = thing(scene, i);
      Line line = holder == null
          ? new Line().say("hay") : new Line().say(holder.spanish()).say(Verb.HAVE.spanish(holder));
      sentences.add(line.spanish(number, thing.gender()).say(thing.spanish(number)).statement());
    }
    return sentences;
  }

  /** A child who can have something, or null: barns have no hats. */
  private static Holder holder(Scene scene) {
    return scene.holders().stream().filter(each -> each.pronoun() != Pronoun.IT).findFirst().orElse(null);
  }

  private static Noun thing(Scene scene, int index) {
    List<Noun> free = THINGS.stream()
        .filter(noun -> scene.nouns().stream().noneMatch(told -> told.one().endsWith(noun.one()))).toList();
    return free.get(index % free.size());
  }
}
