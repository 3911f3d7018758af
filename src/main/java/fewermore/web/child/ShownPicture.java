package fewermore.web.child;

import fewermore.classroom.Picture;

/** A child's picture on a page. @param ground one of {@link Picture#GROUNDS}: also the CSS class */
public record ShownPicture(String id, String ground) {
  public static ShownPicture of(Picture picture) {
    return new ShownPicture(picture.id(), picture.ground());
  }

  /** The SVG, ready to be written unescaped. */
  public String drawing() {
    return Drawings.of(id);
  }
}
