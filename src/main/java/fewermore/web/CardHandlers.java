package fewermore.web;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.store.CardStore;
import fewermore.web.child.SecretPage;
import fewermore.web.teacher.CardSheet;
import fewermore.web.teacher.CardsPage;
import fewermore.web.teacher.Place;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Desk cards and picture secrets: what lets a child in beside today's door. */
final class CardHandlers {
  private static final int USUAL_DAYS = 120;
  private static final int MOST_DAYS = 400;

  private final TeacherHandlers teacher;

  CardHandlers(TeacherHandlers teacher) {
    this.teacher = teacher;
  }

  void page(Context request) {
    teacher.inClass(request, classroom -> show(request, classroom, null));
  }

  private void show(Context request, Classroom classroom, String problem) {
    Services services = teacher.services;
    List<Child> children = services.classes.children(classroom.id());
    teacher.render(request, "teacher/cards", CardsPage.of(children, services.cards.cards(classroom.id()),
        services.reach.address().orElse(null), services.today(classroom).plusDays(USUAL_DAYS),
        services.today(classroom).plusDays(MOST_DAYS), services.today(classroom),
        services.cards.asksSecret(classroom.id()), services.cards.secrets(classroom.id()), problem),
        teacher.frame(classroom, Place.SETUP));
  }

  /** Makes cards and shows them at once, for printing: what is on them is not kept, so they can't be shown again. */
  void print(Context request) {
    teacher.inClass(request, classroom -> {
      Services services = teacher.services;
      String address = services.reach.address().orElse(null);
      LocalDate today = services.today(classroom);
      LocalDate until = day(TeacherHandlers.form(request, "until"));
      String problem = address == null
          ? "This laptop is on no network, so there is no address to print. Join the Wi-Fi first."
          : !TeacherHandlers.form(request, "fixed").equals("yes")
          ? "Cards carry this laptop's address. Say first that the address stays as it is: without that, printed cards "
              + "lead nowhere after the next change. Until then use the Board's code of the day."
          : until == null || until.isBefore(today) || until.isAfter(today.plusDays(MOST_DAYS))
          ? "A day from today to " + MOST_DAYS + " days on was expected. Choose until when the cards are good." : null;
      if (problem != null) {
        request.status(422);
        show(request, classroom, problem);
        return;
      }
      List<Child> children = chosen(request, classroom);
      Map<Long, String> hashes = new LinkedHashMap<>();
      List<CardSheet.Card> cards = new ArrayList<>();
      for (Child child : children) {
        String letters = services.tokens.card();
        hashes.put(child.id(), CardDoor.hash(letters));
        cards.add(CardSheet.Card.of(child, (address + "/c/" + letters).toUpperCase(Locale.ROOT)));
      }
      services.cards.make(hashes, address, until, services.now());
      teacher.render(request, "teacher/card-sheet", CardSheet.of(classroom.name(), cards, until), null);
    });
  }

  private List<Child> chosen(Context request, Classroom classroom) {
    List<Child> all = teacher.services.classes.children(classroom.id());
    String child = TeacherHandlers.form(request, "child");
    if (child.isEmpty()) {
      return all;
    }
    List<Child> one = all.stream().filter(each -> Long.toString(each.id()).equals(child)).toList();
    if (one.isEmpty()) {
      throw Refusal.notFound();
    }
    return one;
  }

  private static LocalDate day(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      return null;
    }
  }

  void revoke(Context request) {
    teacher.inClass(request, classroom -> {
      CardStore cards = teacher.services.cards;
      if (TeacherHandlers.form(request, "child").isEmpty()) {
        cards.revokeAll(classroom.id(), teacher.services.now());
      } else {
        chosen(request, classroom).forEach(child -> cards.revoke(child.id(), teacher.services.now()));
      }
      request.redirect("/setup/cards", HttpStatus.SEE_OTHER);
    });
  }

  /** Switches picture secrets on or off, draws them anew, or sets one child's. */
  void secrets(Context request) {
    teacher.inClass(request, classroom -> {
      Services services = teacher.services;
      switch (TeacherHandlers.form(request, "do")) {
        case "on" -> {
          services.cards.setSecrets(drawn(classroom, services.cards.secrets(classroom.id())));
          services.cards.askSecret(classroom.id(), true);
        }
        case "off" -> services.cards.askSecret(classroom.id(), false);
        case "all" -> services.cards.setSecrets(drawn(classroom, Map.of()));
        case "one" -> {
          List<String> two = request.formParams("secret").stream().distinct().toList();
          if (two.size() != SecretPage.LENGTH || !SecretPage.CHOICES.containsAll(two)) {
            request.status(422);
            show(request, classroom, "Two different pictures were expected. Choose two.");
            return;
          }
          chosen(request, classroom).stream().limit(1)
              .forEach(child -> services.cards.setSecrets(Map.of(child.id(), two)));
        }
        default -> throw new Refusal(422, "A choice from the page was expected. Go back and press a button there.");
      }
      request.redirect("/setup/cards", HttpStatus.SEE_OTHER);
    });
  }

  /** Two pictures by lot for each child that has none. */
  private Map<Long, List<String>> drawn(Classroom classroom, Map<Long, List<String>> there) {
    Map<Long, List<String>> drawn = new LinkedHashMap<>();
    for (Child child : teacher.services.classes.children(classroom.id())) {
      if (!there.containsKey(child.id())) {
        List<String> all = new ArrayList<>(SecretPage.CHOICES);
        String first = all.remove(teacher.services.tokens.below(all.size()));
        drawn.put(child.id(), List.of(first, all.get(teacher.services.tokens.below(all.size()))));
      }
    }
    return drawn;
  }
}
