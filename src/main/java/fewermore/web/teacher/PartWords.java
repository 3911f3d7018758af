package fewermore.web.teacher;

import fewermore.marking.Part;

/** The parts of the work as a teacher reads them: what stands on the child's tab, in English. */
final class PartWords {
  private PartWords() {}

  static String of(Part part) {
    return switch (part) {
      case READING -> "find the question";
      case STRATEGY -> "work it out";
      case ESTIMATE -> "about how many";
      default -> part.id();
    };
  }
}
