package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.web.child.Drawings;

/** A child beside her own picture. @param ground the CSS class of the picture's ground */
public record ShownChild(long id, String name, String picture, String ground) {
  public static ShownChild of(Child child) {
    return new ShownChild(child.id(), child.name(), child.picture(), child.ground());
  }

  /** The SVG, ready to be written unescaped; it holds nothing a person typed. */
  public String drawing() {
    return Drawings.of(picture);
  }
}
