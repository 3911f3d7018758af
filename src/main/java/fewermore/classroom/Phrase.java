package fewermore.classroom;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A sentence in runs, so that a page can set a word of the story or a count apart. A value; adding makes another. */
public record Phrase(List<Run> runs) {
  public Phrase {
    runs = List.copyOf(runs);
  }

  /** How a run is set: as it is, as a word of the story, as a count, or as a stretch of a child's own work. */
  public enum Voice { PLAIN, WORD, COUNT, WORK }

  public record Run(Voice voice, String text) {}

  public static Phrase of(String text) {
    return new Phrase(List.of()).text(text);
  }

  public Phrase text(String text) {
    return and(Voice.PLAIN, text);
  }

  public Phrase word(String text) {
    return and(Voice.WORD, text);
  }

  public Phrase count(String text) {
    return and(Voice.COUNT, text);
  }

  public Phrase work(String text) {
    return and(Voice.WORK, text);
  }

  /** This sentence with another after it. */
  public Phrase and(Phrase after) {
    List<Run> more = new ArrayList<>(runs);
    more.addAll(after.runs);
    return new Phrase(more);
  }

  private Phrase and(Voice voice, String text) {
    List<Run> more = new ArrayList<>(runs);
    more.add(new Run(voice, text));
    return new Phrase(more);
  }

  /** The sentence without its setting. */
  @Override
  public String toString() {
    return runs.stream().map(Run::text).collect(Collectors.joining());
  }
}
