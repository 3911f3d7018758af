package fewermore.classroom;

import java.time.Instant;

/** One child on one tablet, from coming in to "I'm done". {@code endedAt} is null while it is open. */
public record Sitting(String id, Child child, String tablet, String tabletName, Instant startedAt, Instant endedAt) {
  public boolean open() {
    return endedAt == null;
  }
}
