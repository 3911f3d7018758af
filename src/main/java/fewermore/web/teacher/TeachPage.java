package fewermore.web.teacher;

/**
 * A problem taught on the Board. {@code pages/board/teach.html}, {@code GET /board/problem/{number}?step=n}.
 *
 * @param lesson null where a name of the class stands in the story: it is not shown
 */
public record TeachPage(int number, int of, Lesson lesson) {}
