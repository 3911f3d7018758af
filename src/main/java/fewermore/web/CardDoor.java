package fewermore.web;

import fewermore.classroom.Child;
import fewermore.store.CardStore.Card;
import io.javalin.http.Context;
import java.util.Locale;

/**
 * Coming in by a desk card. Looking at one changes nothing; only the answer "Yes, it's me" does. What is on the card is
 * kept as a hash, stands in no log, and goes to no other site.
 */
final class CardDoor {
  private final TabletHandlers tablet;

  CardDoor(TabletHandlers tablet) {
    this.tablet = tablet;
  }

  /** Whether a path is a card's; printed in capitals it makes a smaller code. */
  static boolean isCard(String path) {
    return path.regionMatches(true, 0, "/c/", 0, 3);
  }

  static String hash(String letters) {
    return Tokens.hash(letters.toUpperCase(Locale.ROOT));
  }

  void look(Context request) {
    request.header("Referrer-Policy", "no-referrer");
    tablet.askWhether(request, child(request), post(request));
  }

  void itIsMe(Context request) {
    request.header("Referrer-Policy", "no-referrer");
    tablet.takeASeat(request, child(request), post(request));
  }

  private static String post(Context request) {
    return "/c/" + request.pathParam("card").toUpperCase(Locale.ROOT);
  }

  private Child child(Context request) {
    return tablet.services.cards.card(hash(request.pathParam("card")))
        .filter(card -> good(card))
        .map(Card::child)
        .orElseThrow(() -> new Refusal(404, tablet.text(request, "card.over")));
  }

  private boolean good(Card card) {
    return tablet.services.classes.find(card.child().classroom())
        .map(tablet.services::today)
        .filter(today -> !today.isAfter(card.goodUntil()))
        .isPresent();
  }
}
