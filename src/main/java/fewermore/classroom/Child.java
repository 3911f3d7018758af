package fewermore.classroom;

/**
 * A child of a class list.
 *
 * @param name the first name as the class uses it
 * @param picture id of the child's own drawing, for example {@code leaf}
 * @param ground one of the six soft grounds behind it, for example {@code moss}
 * @param language {@code en} or {@code es}: what the child reads
 */
public record Child(long id, long classroom, String name, String picture, String ground, String language) {}
