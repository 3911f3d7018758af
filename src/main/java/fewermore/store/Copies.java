package fewermore.store;

import java.util.List;

/** The copies of the data that this app made itself: they are told when something was erased. */
public interface Copies {
  /**
   * Called after something was erased for good from the data file: every copy must lose it too, by being made anew
   * or removed.
   *
   * @return a sentence for each copy that still holds what was erased; empty when none does
   */
  List<String> somethingWasErased();
}
