package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.Picture;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;

/**
 * One child's name, picture and language; leaving, coming back, erasing. {@code pages/teacher/child-setup.html}.
 *
 * @param left when she left, or null
 * @param request since when a family's request is open, or null
 * @param pictures every drawing; {@code takenBy} names the child who has it
 * @param problem a sentence about the last try, or null
 */
public record ChildSetupPage(
    ShownChild child, String language, String picture, String left, String request, List<Choice> pictures,
    String problem) {
  public record Choice(String id, String drawing, String ground, String takenBy, boolean own) {}

  public static ChildSetupPage of(
      Child child, LocalDate left, LocalDate request, Collection<Child> all, String problem) {
    List<Choice> pictures = Picture.ALL.stream().map(each -> {
      String takenBy = all.stream().filter(other -> other.id() != child.id() && other.picture().equals(each.id()))
          .map(Child::name).findFirst().orElse(null);
      return new Choice(each.id(), fewermore.web.child.Drawings.of(each.id()), each.ground(), takenBy,
          each.id().equals(child.picture()));
    }).toList();
    return new ChildSetupPage(ShownChild.of(child), child.language(), child.picture(),
        left == null ? null : AmericanDates.longDay(left), request == null ? null : AmericanDates.longDay(request),
        pictures, problem);
  }
}
