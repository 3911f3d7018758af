package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.Picture;
import fewermore.store.CardStore.Card;
import fewermore.web.child.SecretPage;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Desk cards and picture secrets. {@code pages/teacher/cards.html}, {@code GET /setup/cards}.
 *
 * <p>Forms: {@code POST /setup/cards}: {@code fixed}, {@code until}, {@code child} for one, answered by the sheet to
 * print; {@code POST /setup/cards/revoke}: {@code child} for one; {@code POST /setup/secrets}: {@code do} of on, off,
 * all, one, and for one {@code child} and {@code secret} twice.
 *
 * @param address what would be printed, or null when there is no network
 * @param stale cards in use that carry another address
 * @param problem a sentence about the last try, or null
 */
public record CardsPage(String address, List<Row> rows, int inUse, int stale, LocalDate until, LocalDate latest,
    LocalDate today, boolean asksSecret, List<ShownPicture> pictures, String problem) {

  /**
   * A child.
   *
   * @param card how her card stands, in words; null without one
   * @param secret her two pictures, or empty
   */
  public record Row(ShownChild child, String card, boolean stale, List<ShownPicture> secret) {
    /** Whether a picture is one of her two. */
    public boolean has(String picture) {
      return secret.stream().anyMatch(each -> each.id().equals(picture));
    }
  }

  /** A drawing of a secret. */
  public record ShownPicture(String id, String ground) {
    public String drawing() {
      return fewermore.web.child.Drawings.of(id);
    }

    static ShownPicture of(String id) {
      return new ShownPicture(id, Picture.of(id).map(Picture::ground).orElse("fog"));
    }
  }

  public CardsPage {
    rows = List.copyOf(rows);
    pictures = List.copyOf(pictures);
  }

  public static CardsPage of(Collection<Child> classList, List<Card> cards, String address, LocalDate until,
      LocalDate latest, LocalDate today, boolean asksSecret, Map<Long, List<String>> secrets, String problem) {
    List<Row> rows = classList.stream().sorted(Comparator.comparing(Child::name)).map(child -> {
      Optional<Card> card = cards.stream().filter(each -> each.child().id() == child.id()).findFirst();
      boolean over = card.filter(each -> each.goodUntil().isBefore(today)).isPresent();
      boolean stale = card.filter(each -> !each.address().equals(address)).isPresent();
      return new Row(ShownChild.of(child), card.map(each -> (over ? "was good until " : "good until ")
          + AmericanDates.shortDay(each.goodUntil())).orElse(null), stale,
          secrets.getOrDefault(child.id(), List.of()).stream().map(ShownPicture::of).toList());
    }).toList();
    return new CardsPage(address, rows, cards.size(), (int) rows.stream().filter(Row::stale).count(), until, latest,
        today, asksSecret, SecretPage.CHOICES.stream().map(ShownPicture::of).toList(), problem);
  }
}
