package fewermore.web;

import fewermore.classroom.Classroom;
import fewermore.web.teacher.AmericanDates;
import fewermore.web.teacher.Place;
import fewermore.web.teacher.ReachNote;
import fewermore.web.teacher.ReachPage;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Can tablets reach this laptop? Only a tablet's own request proves it. */
final class ReachHandlers {
  private final TeacherHandlers teacher;

  ReachHandlers(TeacherHandlers teacher) {
    this.teacher = teacher;
  }

  /** {@code ?since=} the instant the page was first opened: what came before proves nothing about now. */
  void page(Context request) {
    teacher.inClass(request, classroom -> {
      Services services = teacher.services;
      Instant now = services.now();
      Instant since = since(request.queryParam("since"), now);
      if (since == null) {
        request.redirect("/setup/reach?since=" + now.toEpochMilli(), HttpStatus.SEE_OTHER);
        return;
      }
      List<ReachPage.Reached> reached = new ArrayList<>();
      for (Visitors.Visitor visitor : services.visitors.since(since)) {
        reached.add(reached(visitor, classroom, now));
      }
      AddressPicker.Choice choice = services.reach.choice();
      Optional<String> address = services.reach.address();
      teacher.render(request, "teacher/reach", ReachPage.of(address.map(each -> each + HelloHandlers.PATH).orElse(null),
          services.reach.otherAddresses(), choice.vpn(), choice.publicRange(), change(services, classroom), reached,
          java.time.Duration.between(since, now).toSeconds()), teacher.frame(classroom, Place.SETUP),
          services.turnedAway.sentence().<Map<String, Object>>map(said -> Map.of("turnedAway", said)).orElse(Map.of()));
    });
  }

  private static Instant since(String text, Instant now) {
    Instant since = text == null ? null
        : TabletHandlers.number(text).filter(millis -> millis > 0).map(Instant::ofEpochMilli).orElse(null);
    return since == null || since.isAfter(now) ? null : since;
  }

  /** What changed of the address today, as a sentence; null when nothing did. */
  static String change(Services services, Classroom classroom) {
    return Watch.changedSince(services, services.midnight(classroom))
        .filter(change -> services.reach.address().filter(change.before()::equals).isEmpty())
        .map(change -> "This laptop's address changed at " + AmericanDates.clock(change.at(), classroom.zone())
            + ". Before, it was " + change.before() + ": open pages and printed cards with that address lead nowhere. "
            + "Scan the new code on the Board.")
        .orElse(null);
  }

  private static ReachPage.Reached reached(Visitors.Visitor visitor, Classroom classroom, Instant now) {
    Visitors.Report report = visitor.report();
    boolean waited = visitor.asked() != null && visitor.asked().plusSeconds(6).isBefore(now);
    String able = report != null
        ? "Script on. Storage " + (report.storage() ? "on" : "off: work is kept in the open page only") + ". "
            + voices(report)
        : visitor.asked() == null ? "It did not open the code above, so nothing more is known of it."
        : waited ? "No script: the same problems come as plain forms." : "Trying things out…";
    return new ReachPage.Reached(visitor.address(), visitor.browser(),
        AmericanDates.clock(visitor.at(), classroom.zone()), able);
  }

  private static String voices(Visitors.Report report) {
    return report.english() && report.spanish() ? "A voice of its own for English and for Spanish."
        : report.english() ? "A voice of its own for English, none for Spanish."
        : report.spanish() ? "A voice of its own for Spanish, none for English."
        : "No voice of its own: it can't read aloud.";
  }

  void choose(Context request) {
    teacher.inClass(request, classroom -> {
      String address = TeacherHandlers.form(request, "address");
      if (!teacher.services.reach.otherAddresses().contains(address)) {
        throw new Refusal(422, "An address from the list was expected. Go back and choose one.");
      }
      teacher.services.reach.portOf(address).ifPresent(port ->
          teacher.services.teachers.set(Reach.CHOSEN, port.name()));
      request.redirect("/setup/reach", HttpStatus.SEE_OTHER);
    });
  }

  void note(Context request) {
    teacher.inClass(request, classroom -> {
      Services services = teacher.services;
      Optional<String> address = services.reach.address();
      teacher.render(request, "teacher/reach-note", new ReachNote(address.orElse(null), services.reach.port(),
          address.flatMap(services.reach::portOf).map(NetworkPort::hardware).orElse(null)),
          teacher.frame(classroom, Place.SETUP));
    });
  }
}
