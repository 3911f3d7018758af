package fewermore.story;

/** Who or what has more and who has fewer; either name is null when the story does not say it. */
public record Persons(String larger, String smaller) {
  public static final Persons UNNAMED = new Persons(null, null);
}
