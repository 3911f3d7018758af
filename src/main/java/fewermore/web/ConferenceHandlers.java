package fewermore.web;

import static fewermore.web.TeacherHandlers.form;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.records.Conference;
import fewermore.records.Conference.Place;
import fewermore.store.RecordStore.OwnSentence;
import fewermore.store.TeacherStore.Teacher;
import fewermore.web.teacher.ConferencePage;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The page for a family: shown, changed sentence by sentence, printed. */
final class ConferenceHandlers {
  private final TeacherHandlers desk;
  private final Services services;

  ConferenceHandlers(TeacherHandlers desk) {
    this.desk = desk;
    this.services = desk.services;
  }

  private Conference conference(Child child, Classroom classroom, String language) {
    return Conference.of(child, services.works.piecesOf(child), services.records.chosen(child.id()),
        services.today(classroom), language);
  }

  private String language(Context request, Child child) {
    String asked = request.queryParam("in");
    return asked == null ? child.language() : asked.equals("es") ? "es" : "en";
  }

  void page(Context request) {
    desk.inAnyClass(request, classroom -> {
      Child child = RecordsHandlers.childOf(services, request, classroom);
      desk.render(request, "teacher/conference", ConferencePage.of(
          conference(child, classroom, language(request, child)), services.records.sentences(child.id()),
          services.today(classroom), teacher(classroom), classroom.name()), desk.frame(classroom, null));
    });
  }

  /** All pages of the class one after the other, for one print. */
  void all(Context request) {
    desk.inAnyClass(request, classroom -> {
      List<ConferencePage> pages = services.classes.children(classroom.id()).stream()
          .map(child -> ConferencePage.of(conference(child, classroom, language(request, child)),
              services.records.sentences(child.id()), services.today(classroom), teacher(classroom), classroom.name()))
          .toList();
      desk.render(request, "teacher/conference-all", pages, desk.frame(classroom, null));
    });
  }

  private String teacher(Classroom classroom) {
    return services.teachers.find(classroom.teacher()).map(Teacher::name).orElse("");
  }

  /** Keeps what the teacher changed; a place left empty, or as the app has it, is the app's own again. */
  void keep(Context request) {
    desk.inClass(request, classroom -> {
      Child child = RecordsHandlers.childOf(services, request, classroom);
      String language = language(request, child);
      Conference conference = conference(child, classroom, language);
      Map<String, OwnSentence> before = services.records.sentences(child.id());
      Map<String, OwnSentence> own = new LinkedHashMap<>();
      Set<String> removed = new HashSet<>();
      for (Place place : Place.values()) {
        String typed = request.formParam(place.id());
        if (typed == null) {
          continue;
        }
        String text = form(request, place.id()).strip().replaceAll("\\s+", " ");
        if (text.length() > place.longest() && !text.equals(conference.sentence(place))) {
          throw new Refusal(422, "At most " + place.longest()
              + " characters a sentence were expected, so that the page stays one page. Go back and shorten it.");
        }
        OwnSentence was = before.get(place.id());
        if (text.isEmpty() || text.equals(conference.sentence(place))) {
          removed.add(place.id());
        } else {
          own.put(place.id(), was != null && was.content().equals(text) ? was : new OwnSentence(language, text));
        }
      }
      services.records.sentences(child.id(), own, removed, services.now());
      request.redirect("/records/child/" + child.id() + "/conference?in=" + language, HttpStatus.SEE_OTHER);
    });
  }
}
