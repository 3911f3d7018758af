package fewermore.classroom;

import fewermore.story.Kind;
import java.util.Optional;

/** What a {@link Finding} may say: one of the patterns, or why nothing is said. In the order of a tie. */
public enum Topic {
  TOOK_AWAY_AT_FEWER("fewer", Pattern.TOOK_AWAY_AT_FEWER),
  ADDED_AT_MORE("more", Pattern.ADDED_AT_MORE),
  DIFFERENCE_AS_AMOUNT("gap", Pattern.DIFFERENCE_AS_AMOUNT),
  TURNED_ROUND("turned", Pattern.TURNED_ROUND),
  ADDED_ANYWAY("added", Pattern.ADDED_ANYWAY),
  TOOK_AWAY_ANYWAY("took-away", Pattern.TOOK_AWAY_ANYWAY),
  CHANGED("changed", null),
  FROM_THE_STORY("story", Pattern.FROM_THE_STORY),
  NO_ONE_WAY("no-one-way", null),
  /** The teacher put aside what would be said. */
  PUT_ASIDE("put-aside", null),
  TOO_EARLY("early", null);

  private final String id;
  private final Pattern pattern;

  Topic(String id, Pattern pattern) {
    this.id = id;
    this.pattern = pattern;
  }

  /** The word used in addresses of pages. */
  public String id() {
    return id;
  }

  public Optional<Pattern> pattern() {
    return Optional.ofNullable(pattern);
  }

  static Topic of(Pattern pattern) {
    for (Topic topic : values()) {
      if (topic.pattern == pattern) {
        return topic;
      }
    }
    throw new IllegalStateException("no topic for " + pattern);
  }

  /** Whether work on this kind can be evidence; without a pattern, where word and story part ways. */
  public boolean relevant(Kind kind) {
    return followsTheWord() || pattern == null ? !kind.agrees() : pattern.relevant(kind);
  }

  public boolean followsTheWord() {
    return pattern != null && pattern.followsTheWord();
  }
}
