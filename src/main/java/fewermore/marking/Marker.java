package fewermore.marking;

import fewermore.story.Comparison;
import fewermore.wording.TeachersSpanish;

/** Marks a piece of work from the story alone. Stateless; safe to share between threads. */
public final class Marker {
  /** Rises whenever the same work may get another mark; stored with every mark. */
  public static final int VERSION = 4;

  private Marker() {}

  /** The marks of each part that was asked. Never throws, whatever the child wrote. */
  public static Marks mark(Comparison story, Work work) {
    return mark(story, work, TeachersSpanish.NONE);
  }

  /** The same, where a label may also be in the Spanish that the teacher gave for her own words. */
  public static Marks mark(Comparison story, Work work, TeachersSpanish spanish) {
    return new Marks(
        work.equation() == null ? null : EquationMarker.mark(story, work.equation()),
        work.answer() == null ? null : AnswerMarker.mark(story, work.equation(), work.answer()),
        work.label() == null ? null : LabelMarker.mark(story, work.label(), spanish),
        work.bars() == null ? null : BarsMarker.mark(story, work.bars()),
        work.estimate() == null ? null : EstimateMarker.mark(story, work.estimate()),
        work.strategy() == null ? null : StrategyMarker.mark(story, work.equation(), work.strategy()));
  }
}
