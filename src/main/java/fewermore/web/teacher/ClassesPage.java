package fewermore.web.teacher;

import fewermore.classroom.Classroom;
import java.util.Collection;
import java.util.List;
import java.util.Set;

/** The teacher's classes, the open one marked. {@code pages/teacher/classes.html}. */
public record ClassesPage(List<One> classes) {
  /** @param note what kind of class it is beyond an ordinary one; empty for that */
  public record One(long id, String name, String note, boolean here) {}

  /** Asks before another class is opened. {@code pages/teacher/change-class.html}; posts to {@code /classes/{id}/look}. */
  public record Change(String from, long id, String to, int children) {}

  public static ClassesPage of(Classroom here, Collection<Classroom> all, Set<Long> closed) {
    return new ClassesPage(all.stream().map(each -> new One(each.id(), each.name(),
        closed.contains(each.id()) ? "a year that is over" : each.invented() ? "invented" : "",
        each.id() == here.id())).toList());
  }
}
