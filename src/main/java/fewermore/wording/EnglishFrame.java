package fewermore.wording;

import fewermore.story.Comparison;
import fewermore.story.Role;
import fewermore.story.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The English sentences, one class for each way of telling. */
final class EnglishFrame {
  private EnglishFrame() {}

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
    return story.wording() == Wording.MORE ? "more" : "fewer";
  }

  /** Questions of ten words at most, where there is one. */
  private static List<Sentence> shortOnes(List<Sentence> questions) {
    List<Sentence> shortOnes = questions.stream().filter(each -> each.text().split(" ").length <= 10).toList();
    return shortOnes.isEmpty() ? questions : shortOnes;
  }

  private static String subject(Holder holder, boolean pronoun) {
    return pronoun ? holder.pronoun().word().orElse(holder.english()) : holder.english();
  }

  private record OfCounted(Comparison story, Scene.Counted scene) implements Frame {
    private Holder holder(Role role) {
      return role == Role.LARGER ? scene.larger() : scene.smaller();
    }

    @Override
    public Sentence amount(Role role, boolean pronoun) {
      int amount = story.value(role);
      return new Line().say(subject(holder(role), pronoun)).say(scene.verb().told(holder(role))).english(amount)
          .say(scene.thing().english(amount)).statement();
    }

    @Override
    public Sentence comparing(boolean pronoun, boolean leftOut) {
      Holder subject = holder(Frame.subject(story));
      int difference = story.value(Role.DIFFERENCE);
      return new Line().say(subject(subject, pronoun)).say(scene.verb().told(subject)).english(difference)
          .say(compared(story)).say(leftOut ? null : scene.thing().english(difference)).say("than")
          .say(holder(Frame.reference(story)).english()).statement();
    }

    @Override
    public List<Sentence> questions() {
      if (story.wording() == Wording.DIFFERENCE) {
        return List.of(new Line().say("what is the difference in the number of").say(scene.thing().many()).question());
      }
      Holder asked = holder(Frame.asksDifference(story) ? Frame.subject(story) : story.unknown());
      Line line = new Line().say("how many").say(Frame.asksDifference(story) ? compared(story) : null)
          .say(scene.thing().many()).say(scene.verb().helper(asked)).say(asked.english()).say(scene.verb().base());
      if (Frame.asksDifference(story)) {
        line.say("than").say(holder(Frame.reference(story)).english());
      }
      return List.of(line.question());
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

    private Line begun(int count, boolean pronoun) {
      return scene.owner() == null
          ? new Line().say(count == 1 ? "there is" : "there are")
          : new Line().say(subject(scene.owner(), pronoun)).say(scene.verb().told(scene.owner()));
    }

    @Override
    public Sentence amount(Role role, boolean pronoun) {
      int amount = story.value(role);
      return begun(amount, pronoun).english(amount).say(kind(role).english(amount)).say(scene.place()).statement();
    }

    @Override
    public Sentence comparing(boolean pronoun, boolean leftOut) {
      int difference = story.value(Role.DIFFERENCE);
      return begun(difference, pronoun).english(difference).say(compared(story))
          .say(kind(Frame.subject(story)).english(difference)).say("than").say(kind(Frame.reference(story)).many())
          .statement();
    }

    @Override
    public List<Sentence> questions() {
      if (story.wording() == Wording.DIFFERENCE) {
        return List.of(new Line().say("what is the difference between").say(scene.larger().many()).say("and")
            .say(scene.smaller().many()).question());
      }
      Line line = new Line().say("how many");
      if (Frame.asksDifference(story)) {
        line.say(compared(story)).say(kind(Frame.subject(story)).many()).say("than")
            .say(kind(Frame.reference(story)).many());
      } else {
        line.say(kind(story.unknown()).many());
      }
      if (scene.owner() != null) {
        line.say(scene.verb().helper(scene.owner())).say(scene.owner().english()).say(scene.verb().base());
      } else if (Frame.asksDifference(story) || scene.place() == null) {
        line.say("are there");
      } else {
        line.say("are").say(scene.place());
      }
      return List.of(line.question());
    }
  }

  private record OfEachItsKind(Comparison story, Scene.EachItsKind scene) implements Frame {
    private Holder holder(Role role) {
      return role == Role.LARGER ? scene.larger() : scene.smaller();
    }

    private Noun kind(Role role) {
      return role == Role.LARGER ? scene.largerKind() : scene.smallerKind();
    }

    @Override
    public Optional<Sentence> opening() {
      if (Frame.asksDifference(story)) {
        return Optional.empty();
      }
      Holder asked = holder(story.unknown());
      return Optional.of(new Line().say(asked.english()).say(scene.verb().told(asked))
          .say(kind(story.unknown()).many()).statement());
    }

    @Override
    public Sentence amount(Role role, boolean pronoun) {
      int amount = story.value(role);
      return new Line().say(holder(role).english()).say(scene.verb().told(holder(role))).english(amount)
          .say(kind(role).english(amount)).statement();
    }

    @Override
    public Sentence comparing(boolean pronoun, boolean leftOut) {
      int difference = story.value(Role.DIFFERENCE);
      return new Line().say(difference == 1 ? "there is" : "there are").english(difference).say(compared(story))
          .say(kind(Frame.subject(story)).english(difference)).say("than").say(kind(Frame.reference(story)).many())
          .statement();
    }

    @Override
    public List<Sentence> questions() {
      if (story.wording() == Wording.DIFFERENCE) {
        return List.of(new Line().say("what is the difference between").say(scene.largerKind().many()).say("and")
            .say(scene.smallerKind().many()).question());
      }
      if (Frame.asksDifference(story)) {
        return List.of(new Line().say("how many").say(compared(story)).say(kind(Frame.subject(story)).many())
            .say("than").say(kind(Frame.reference(story)).many()).say("are there").question());
      }
      Holder asked = holder(story.unknown());
      return List.of(new Line().say("how many").say(kind(story.unknown()).many()).say(scene.verb().helper(asked))
          .say(asked.english()).say(scene.verb().base()).question());
    }
  }

  private record OfMeasured(Comparison story, Scene.Measured scene) implements Frame {
    private Holder holder(Role role) {
      return role == Role.LARGER ? scene.larger() : scene.smaller();
    }

    private Measure measure() {
      return scene.measure();
    }

    private String compared() {
      return story.wording() == Wording.MORE ? measure().more() : measure().fewer();
    }

    /** "Ines's rope", "the barn", "Ines". */
    private String named(Role role) {
      return scene.owned() == null
          ? holder(role).english() : holder(role).possessive() + " " + scene.owned().one();
    }

    private String named(Role role, boolean leftOut) {
      return leftOut && scene.owned() != null ? holder(role).possessive() : named(role);
    }

    private String begun(Role role, boolean pronoun) {
      return pronoun && scene.owned() != null ? "it" : pronoun ? subject(holder(role), true) : named(role);
    }

    private boolean several(Role role) {
      return scene.owned() == null && holder(role).several();
    }

    private String told(Role role) {
      if (measure().hasAdjective()) {
        return several(role) ? "are" : "is";
      }
      return several(role) ? measure().verb().told(holder(role)) : measure().verb().told();
    }

    private String helper(Role role) {
      return several(role) ? measure().verb().helper(holder(role)) : measure().verb().helper();
    }

    @Override
    public Sentence amount(Role role, boolean pronoun) {
      int amount = story.value(role);
      return new Line().say(begun(role, pronoun)).say(told(role)).say(measure().before()).english(amount)
          .say(scene.unit().english(amount)).say(measure().adjective()).statement();
    }

    @Override
    public Sentence comparing(boolean pronoun, boolean leftOut) {
      int difference = story.value(Role.DIFFERENCE);
      return new Line().say(begun(Frame.subject(story), pronoun)).say(told(Frame.subject(story))).english(difference)
          .say(scene.unit().english(difference)).say(compared()).say("than")
          .say(named(Frame.reference(story), leftOut)).statement();
    }

    @Override
    public List<Sentence> questions() {
      if (story.wording() == Wording.DIFFERENCE) {
        return List.of(new Line().say("what is the difference in").say(scene.unit().many()).question());
      }
      return Frame.asksDifference(story) ? differenceQuestions() : amountQuestions(story.unknown());
    }

    private List<Sentence> amountQuestions(Role asked) {
      if (measure().hasAdjective()) {
        return List.of(
            new Line().say("how").say(measure().adjective()).say(told(asked)).say(named(asked)).question(),
            new Line().say("how many").say(scene.unit().many()).say(measure().adjective()).say(told(asked))
                .say(named(asked)).question());
      }
      List<Sentence> questions = new ArrayList<>();
      if (measure().mass() != null) {
        questions.add(new Line().say("how much").say(measure().mass()).say(helper(asked)).say(named(asked))
            .say(measure().verb().base()).question());
      }
      questions.add(new Line().say("how many").say(scene.unit().many()).say(helper(asked)).say(named(asked))
          .say(measure().verb().base()).question());
      return questions;
    }

    private List<Sentence> differenceQuestions() {
      Role subject = Frame.subject(story);
      String reference = named(Frame.reference(story), true);
      if (measure().hasAdjective()) {
        return shortOnes(List.of(
            new Line().say("how many").say(scene.unit().many()).say(compared()).say(told(subject))
                .say(named(subject)).say("than").say(reference).question(),
            new Line().say("how much").say(compared()).say(told(subject)).say(named(subject)).say("than")
                .say(reference).question()));
      }
      List<Sentence> questions = new ArrayList<>();
      if (measure().mass() != null) {
        questions.add(new Line().say("how much").say(compared()).say(measure().mass()).say(helper(subject))
            .say(named(subject)).say(measure().verb().base()).say("than").say(reference).question());
      }
      questions.add(new Line().say("how many").say(EnglishFrame.compared(story)).say(scene.unit().many())
          .say(helper(subject)).say(named(subject)).say(measure().verb().base()).say("than").say(reference)
          .question());
      return shortOnes(questions);
    }
  }
}
