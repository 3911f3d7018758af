package fewermore.calculation;

import java.util.List;

/**
 * A sentence about numbers in no language yet: the key of its text, and what stands in its places: whole numbers and
 * {@link Pile}s. {@link StepWords} says it.
 */
public record Said(String key, List<Object> with) {
  public Said {
    with = List.copyOf(with);
  }

  static Said of(String key, Object... with) {
    return new Said(key, List.of(with));
  }
}
