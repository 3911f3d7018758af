package fewermore.web.teacher;

import fewermore.classroom.Child;
import java.time.LocalDate;
import java.util.List;

/**
 * Desk cards to print and cut, eight a page. {@code pages/teacher/card-sheet.html}. Shown once: what is on them is kept
 * as a hash only.
 *
 * @param until for example {@code March 25}
 */
public record CardSheet(String className, List<Card> cards, String until) {
  /** @param address in capitals: a code of letters and digits alone is smaller */
  public record Card(ShownChild child, String address, QrPicture qr) {
    public static Card of(Child child, String address) {
      return new Card(ShownChild.of(child), address, QrPicture.of(address));
    }
  }

  public CardSheet {
    cards = List.copyOf(cards);
  }

  public static CardSheet of(String className, List<Card> cards, LocalDate until) {
    return new CardSheet(className, cards, AmericanDates.longDay(until));
  }
}
