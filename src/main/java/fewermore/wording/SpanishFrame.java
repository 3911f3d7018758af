package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The Spanish sentences, one class for each way of telling. Always <i>más que</i> and <i>menos que</i>: <i>más de</i>
 * compares with a number. The subject is dropped where English has a pronoun. To be read by a native speaker.
 */
final class SpanishFrame {
  private SpanishFrame() {}

  static Frame of(Comparison story, Scene scene) {
    return scene.match(new Scene.Cases<>() {
      @Override
      public Frame counted(Scene.Counted counted) {
        return new OfCounted(story, counted);
      }

      @Override
      public Frame kinds(Scene.Kinds kinds) {
        return new OfKinds(story, kinds);
      }

      @Override
      public Frame eachItsKind(Scene.EachItsKind each) {
        return new OfEachItsKind(story, each);
      }

      @Override
      public Frame measured(Scene.Measured measured) {
        return new OfMeasured(story, measured);
      }
    });
  }

  private static String compared(Comparison story) {
    return story.wording() == Wording.MORE ? "más" : "menos";
  }

  private static Line counting(Line line, int number, Noun noun) {
    return line.spanish(number, noun.gender()).say(noun.spanish(number));
  }

  private record OfCounted(Comparison story, Scene.Counted scene) implements Frame {
    private Holder holder(Role role) {
      return role == Role.LARGER ? scene.larger() : scene.smaller();
    }

    private Line begun(Role role, boolean dropped) {
      return new Line().say(dropped ? null : holder(role).spanish()).say(scene.verb().spanish(holder(role)));
    }

    @Override
    public Sentence amount(Role role, boolean pronoun) {
      return counting(begun(role, pronoun), story.value(role), scene.thing()).statement();
    }

    @Override
    public Sentence comparing(boolean pronoun, boolean leftOut) {
      int difference = story.value(Role.DIFFERENCE);
      Line line = begun(Frame.subject(story), pronoun);
      if (leftOut) {
        line.spanishAlone(difference, scene.thing().gender());
      } else {
        counting(line, difference, scene.thing());
      }
      return line.say(compared(story)).say("que").say(holder(Frame.reference(story)).spanish()).statement();
    }

    @Override
    public List<Sentence> questions() {
      if (story.wording() == Wording.DIFFERENCE) {
        return List.of(new Line().say("cuál es la diferencia en el número de").say(scene.thing().spanishMany())
            .spanishQuestion());
      }
      Role asked = Frame.asksDifference(story) ? Frame.subject(story) : story.unknown();
      Line line = new Line().say(scene.thing().gender().howMany()).say(scene.thing().spanishMany())
          .say(Frame.asksDifference(story) ? compared(story) : null).say(scene.verb().spanish(holder(asked)))
          .say(holder(asked).spanish());
      if (Frame.asksDifference(story)) {
        line.say("que").say(holder(Frame.reference(story)).spanish());
      }
      return List.of(line.spanishQuestion());
    }
  }

  private record OfKinds(Comparison story, Scene.Kinds scene) implements Frame {
    private Noun kind(Role role) {
      return role == Role.LARGER ? scene.larger() : scene.smaller();
    }

    @Override
    public boolean oneOwner() {
      return scene.owner() != null;
    }

    private Line begun(boolean dropped) {
      return scene.owner() == null
          ? new Line().say("hay")
          : new Line().say(dropped ? null : scene.owner().spanish()).say(scene.verb().spanish(scene.owner()));
    }

    @Override
    public Sentence amount(Role role, boolean pronoun) {
      return counting(begun(pronoun), story.value(role), kind(role)).say(scene.spanishPlace()).statement();
    }

    @Override
    public Sentence comparing(boolean pronoun, boolean leftOut) {
      return counting(begun(pronoun), story.value(Role.DIFFERENCE), kind(Frame.subject(story)))
          .say(compared(story)).say("que").say(kind(Frame.reference(story)).spanishMany()).statement();
    }

    @Override
    public List<Sentence> questions() {
      if (story.wording() == Wording.DIFFERENCE) {
        return List.of(differenceBetween(scene.larger(), scene.smaller()));
      }
      Noun asked = kind(Frame.asksDifference(story) ? Frame.subject(story) : story.unknown());
      Line line = new Line().say(asked.gender().howMany()).say(asked.spanishMany());
      if (Frame.asksDifference(story)) {
        line.say(compared(story)).say("que").say(kind(Frame.reference(story)).spanishMany());
      }
      if (scene.owner() == null) {
        line.say("hay").say(Frame.asksDifference(story) ? null : scene.spanishPlace());
      } else {
        line.say(scene.verb().spanish(scene.owner())).say(scene.owner().spanish());
      }
      return List.of(line.spanishQuestion());
    }
  }

  private record OfEachItsKind(Comparison story, Scene.EachItsKind scene) implements Frame {
    private Holder holder(Role role) {
      return role == Role.LARGER ? scene.larger() : scene.smaller();
    }

    private Noun kind(Role role) {
      return role == Role.LARGER ? scene.largerKind() : scene.smallerKind();
    }

    private Line begun(Role role) {
      return new Line().say(holder(role).spanish()).say(scene.verb().spanish(holder(role)));
    }

    @Override
    public Optional<Sentence> opening() {
      return Frame.asksDifference(story)
          ? Optional.empty()
          : Optional.of(begun(story.unknown()).say(kind(story.unknown()).spanishMany()).statement());
    }

    @Override
    public Sentence amount(Role role, boolean pronoun) {
      return counting(begun(role), story.value(role), kind(role)).statement();
    }

    @Override
    public Sentence comparing(boolean pronoun, boolean leftOut) {
      return counting(new Line().say("hay"), story.value(Role.DIFFERENCE), kind(Frame.subject(story)))
          .say(compared(story)).say("que").say(kind(Frame.reference(story)).spanishMany()).statement();
    }

    @Override
    public List<Sentence> questions() {
      if (story.wording() == Wording.DIFFERENCE) {
        return List.of(differenceBetween(scene.largerKind(), scene.smallerKind()));
      }
      if (Frame.asksDifference(story)) {
        Noun asked = kind(Frame.subject(story));
        return List.of(new Line().say(asked.gender().howMany()).say(asked.spanishMany()).say(compared(story))
            .say("que").say(kind(Frame.reference(story)).spanishMany()).say("hay").spanishQuestion());
      }
      Noun asked = kind(story.unknown());
      return List.of(new Line().say(asked.gender().howMany()).say(asked.spanishMany())
          .say(scene.verb().spanish(holder(story.unknown()))).say(holder(story.unknown()).spanish()).spanishQuestion());
    }
  }

  private static Sentence differenceBetween(Noun larger, Noun smaller) {
    return new Line().say("cuál es la diferencia entre").say(larger.spanishMany()).say("y")
        .say(smaller.spanishMany()).spanishQuestion();
  }

  private record OfMeasured(Comparison story, Scene.Measured scene) implements Frame {
    private Holder holder(Role role) {
      return role == Role.LARGER ? scene.larger() : scene.smaller();
    }

    private Noun unit() {
      return scene.unit();
    }

    /** "la cuerda de Ines", "el roble", "Ines". */
    private String named(Role role) {
      Noun owned = scene.owned();
      return owned == null
          ? holder(role).spanish()
          : owned.gender().article() + " " + owned.spanishOne() + " " + holder(role).spanishPossessive();
    }

    /** As the second of two: "la de Tomas". */
    private String reference() {
      Holder holder = holder(Frame.reference(story));
      return scene.owned() == null
          ? holder.spanish() : scene.owned().gender().article() + " " + holder.spanishPossessive();
    }

    private String verb(Role role) {
      return scene.owned() == null
          ? scene.measure().verb().spanish(holder(role)) : scene.measure().verb().spanish();
    }

    @Override
    public Sentence amount(Role role, boolean pronoun) {
      return counting(new Line().say(pronoun ? null : named(role)).say(verb(role)), story.value(role), unit())
          .statement();
    }

    @Override
    public Sentence comparing(boolean pronoun, boolean leftOut) {
      Role subject = Frame.subject(story);
      return counting(new Line().say(pronoun ? null : named(subject)).say(verb(subject)),
          story.value(Role.DIFFERENCE), unit()).say(compared(story)).say("que").say(reference()).statement();
    }

    @Override
    public List<Sentence> questions() {
      if (story.wording() == Wording.DIFFERENCE) {
        return List.of(new Line().say("cuál es la diferencia en").say(unit().spanishMany()).spanishQuestion());
      }
      boolean difference = Frame.asksDifference(story);
      Role asked = difference ? Frame.subject(story) : story.unknown();
      String more = difference ? compared(story) : null;
      String than = difference ? "que " + reference() : null;
      List<Sentence> questions = new ArrayList<>();
      String mass = scene.measure().spanishMass();
      if (mass != null) {
        Line line = new Line().say("cuánto").say(mass.isEmpty() ? more : mass).say(mass.isEmpty() ? null : more);
        questions.add(line.say(verb(asked)).say(named(asked)).say(than).spanishQuestion());
      }
      questions.add(new Line().say(unit().gender().howMany()).say(unit().spanishMany()).say(more).say(verb(asked))
          .say(named(asked)).say(than).spanishQuestion());
      return questions;
    }
  }
}
