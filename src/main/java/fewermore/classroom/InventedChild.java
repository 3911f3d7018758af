package fewermore.classroom;

import fewermore.calculation.SlipRule;
import fewermore.prediction.WayOfReasoning;
import java.util.List;

/**
 * A made-up child, with what no real class list can hold: how she reasons. That is used to invent her work, and is
 * neither kept nor shown.
 *
 * @param language {@code en} or {@code es}
 * @param ways how she reasons, one for each day of the class
 * @param habit the slip of calculation she makes again and again, or null
 * @param hand how she writes an equation down
 */
public record InventedChild(
    String name, Picture picture, String language, List<WayOfReasoning> ways, SlipRule habit, Hand hand) {
  public InventedChild {
    ways = List.copyOf(ways);
  }

  /**
   * How an equation is written down.
   *
   * @param unknown the sign for the unknown
   * @param minus the sign for taking away
   * @param spaced whether there are blanks around signs
   */
  record Hand(String unknown, String minus, boolean spaced) {
    /** What the tablet's own keys write. */
    static final Hand KEYS = new Hand("□", "−", true);

    /** @param plain an equation with {@code □}, {@code −} and single blanks */
    String write(String plain) {
      String written = plain.replace("□", unknown).replace("−", minus);
      return spaced ? written : written.replace(" ", "");
    }
  }
}
