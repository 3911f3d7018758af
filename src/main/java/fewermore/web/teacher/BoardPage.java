package fewermore.web.teacher;

import fewermore.classroom.Door;
import fewermore.classroom.Picture;
import fewermore.web.child.Drawings;
import java.util.List;

/**
 * The day's door on the projector: how a tablet comes in. {@code pages/board/door.html}. Holds no child's name.
 *
 * @param qr of {@code address/in/token}; null when there is no network to come in by
 * @param address what to type without a camera, for example {@code http://192.168.1.23:8420}; null likewise
 * @param pictures the four to tap, in order
 */
public record BoardPage(String className, String day, QrPicture qr, String address, List<DoorPicture> pictures) {
  public BoardPage {
    pictures = List.copyOf(pictures);
  }

  /** @param word what the drawing is called, for those who listen */
  public record DoorPicture(String id, String ground, String word) {
    public String drawing() {
      return Drawings.of(id);
    }
  }

  /** @param address how tablets reach this laptop, or null when they can't */
  public static BoardPage of(String className, Door door, String address) {
    List<DoorPicture> pictures = door.pictures().stream()
        .map(id -> new DoorPicture(id, ground(id), id)).toList();
    QrPicture qr = address == null ? null : QrPicture.of(address + "/in/" + door.token());
    return new BoardPage(className, AmericanDates.longDay(door.day()), qr, address, pictures);
  }

  private static String ground(String id) {
    return Picture.of(id).map(Picture::ground).orElse("fog");
  }
}
