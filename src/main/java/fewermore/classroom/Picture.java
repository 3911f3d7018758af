package fewermore.classroom;

import java.util.List;
import java.util.Optional;

/**
 * A drawing that stands for one child: on the name tile, on every page of the sitting, in the Room.
 *
 * @param id the drawing, for example {@code leaf}
 * @param ground the soft ground it usually stands on, one of {@link #GROUNDS}
 */
public record Picture(String id, String ground) {
  public static final List<String> GROUNDS = List.of("sea", "sand", "moss", "clay", "dusk", "fog");

  /** Every drawing there is: enough that no two children of a class of 36 are alike. */
  public static final List<Picture> ALL = List.of(
      new Picture("shell", "sea"), new Picture("pear", "moss"), new Picture("kite", "dusk"),
      new Picture("sun", "sand"), new Picture("bell", "clay"), new Picture("lantern", "fog"),
      new Picture("fish", "sea"), new Picture("leaf", "moss"), new Picture("umbrella", "dusk"),
      new Picture("key", "sand"), new Picture("carrot", "clay"), new Picture("cup", "fog"),
      new Picture("anchor", "sea"), new Picture("acorn", "moss"), new Picture("boat", "dusk"),
      new Picture("bread", "sand"), new Picture("bucket", "clay"), new Picture("lighthouse", "fog"),
      new Picture("wave", "sea"), new Picture("spade", "moss"), new Picture("scissors", "dusk"),
      new Picture("starfish", "sand"), new Picture("hammer", "clay"), new Picture("raincloud", "fog"),
      new Picture("teapot", "sea"), new Picture("cactus", "moss"), new Picture("drum", "dusk"),
      new Picture("wheel", "sand"), new Picture("mushroom", "clay"), new Picture("mountain", "fog"),
      new Picture("mitten", "sea"), new Picture("tent", "moss"), new Picture("button", "dusk"),
      new Picture("boot", "sand"), new Picture("cherries", "clay"), new Picture("moon", "fog"),
      new Picture("tulip", "clay"), new Picture("snail", "fog"));

  public static Optional<Picture> of(String id) {
    return ALL.stream().filter(picture -> picture.id.equals(id)).findFirst();
  }
}
