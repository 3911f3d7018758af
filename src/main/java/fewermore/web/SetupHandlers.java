package fewermore.web;

import static fewermore.web.TeacherHandlers.form;

import fewermore.classroom.Child;
import fewermore.classroom.ClassSetup;
import fewermore.classroom.Classroom;
import fewermore.classroom.Picture;
import fewermore.marking.Part;
import fewermore.records.RosterReader;
import fewermore.records.RosterReader.Roster;
import fewermore.store.ClassStore.NewChild;
import fewermore.store.Erasing;
import fewermore.web.teacher.ChildSetupPage;
import fewermore.web.teacher.Place;
import fewermore.web.teacher.RosterPage;
import fewermore.web.teacher.SetupPage;
import fewermore.web.teacher.YearPage;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The class list, how the class is set up, the year's end, and erasing. */
final class SetupHandlers {
  private final TeacherHandlers desk;
  private final Services services;

  SetupHandlers(TeacherHandlers desk) {
    this.desk = desk;
    this.services = desk.services;
  }

  // ---- the page ----

  void setup(Context request) {
    desk.inClass(request, classroom -> showSetup(request, classroom, null));
  }

  private void showSetup(Context request, Classroom classroom, String problem) {
    AddressPicker.Choice choice = services.reach.choice();
    desk.render(request, "teacher/setup", SetupPage.of(classroom, services.setups.of(classroom.id()),
        services.classes.children(classroom.id()), services.setups.left(classroom.id()),
        BoardHandlers.backRow(services), services.reach.address().orElse(null), choice.vpn(), choice.publicRange(), folder(), services.today(classroom),
        problem), desk.frame(classroom, Place.SETUP));
  }

  String folder() {
    return services.settings.data().toAbsolutePath().normalize().toString();
  }

  /** How a set is given, and where the class is. */
  void keep(Context request) {
    desk.inClass(request, classroom -> {
      ClassSetup was = services.setups.of(classroom.id());
      String name = form(request, "name").strip();
      Optional<ZoneId> zone = zone(form(request, "zone").strip());
      Optional<Long> tries = TabletHandlers.number(form(request, "tries"))
          .filter(each -> each >= ClassSetup.FEWEST_TRIES && each <= ClassSetup.MOST_TRIES);
      Set<Part> parts = Stream.of(Part.values()).filter(each -> !form(request, "part-" + each.id()).isEmpty())
          .collect(Collectors.toSet());
      String problem = name.isEmpty() || name.length() > 80 ? "A name for the class was expected, for example Room 12."
          : zone.isEmpty() ? "A time zone was expected, for example America/Chicago."
          : tries.isEmpty() ? "From " + ClassSetup.FEWEST_TRIES + " to " + ClassSetup.MOST_TRIES + " tries were expected."
          : parts.isEmpty() ? "At least one part of the work was expected. Check one." : null;
      if (problem != null) {
        request.status(422);
        showSetup(request, classroom, problem);
        return;
      }
      services.setups.set(classroom.id(), name, zone.get(), new ClassSetup(tries.get().intValue(), parts,
          form(request, "tell").equals("later"), was.keptUntil(), was.closedOn()));
      request.redirect("/setup#given", HttpStatus.SEE_OTHER);
    });
  }

  private static Optional<ZoneId> zone(String id) {
    try {
      return Optional.of(ZoneId.of(id)).filter(each -> ZoneId.getAvailableZoneIds().contains(each.getId()));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  // ---- the class list ----

  void addPage(Context request) {
    desk.inClass(request, classroom -> desk.render(request, "teacher/roster-in", RosterPage.empty(),
        desk.frame(classroom, Place.SETUP)));
  }

  /** Reads what was pasted or uploaded and shows it before anything is saved. */
  void read(Context request) {
    desk.inClass(request, classroom -> {
      List<String> texts = new ArrayList<>();
      if (!form(request, "names").isBlank()) {
        texts.add(form(request, "names"));
      }
      for (UploadedFile file : request.uploadedFiles("files")) {
        try {
          String text = new String(file.content().readAllBytes(), StandardCharsets.UTF_8);
          if (!text.isBlank()) {
            texts.add(text);
          }
        } catch (IOException e) {
          throw new Refusal(422, "That file can’t be read. Choose it again, or paste its lines.");
        }
      }
      if (texts.isEmpty()) {
        request.status(422);
        desk.render(request, "teacher/roster-in", RosterPage.refused("",
            "No names are there yet. Paste them, or choose a file."), desk.frame(classroom, Place.SETUP));
        return;
      }
      String chosen = form(request, "class").isEmpty() ? null : form(request, "class");
      Roster roster = RosterReader.read(texts, chosen, services.setups.rosterIds(classroom.id()));
      if (!roster.classes().isEmpty()) {
        desk.render(request, "teacher/roster-in", RosterPage.choose(texts, roster), desk.frame(classroom, Place.SETUP));
        return;
      }
      show(request, classroom, RosterPage.read(roster, services.classes.children(classroom.id())));
    });
  }

  private void show(Context request, Classroom classroom, RosterPage page) {
    desk.render(request, "teacher/roster", page, desk.frame(classroom, Place.SETUP));
  }

  /** Saves the list as it stands on the page, unless two children could not be told apart. */
  void save(Context request) {
    desk.inClass(request, classroom -> {
      List<Child> there = services.classes.children(classroom.id());
      RosterPage page = RosterPage.typed(request.formParams("name").stream().limit(ClassList.MOST + 1L)
              .map(name -> name.strip().replaceAll("\\s+", " ")).toList(),
          request.formParams("language"), request.formParams("roster"), there);
      if (page.problem() != null) {
        request.status(422);
        show(request, classroom, page);
        return;
      }
      List<Picture> free = free(there);
      List<NewChild> children = new ArrayList<>();
      for (RosterPage.NewRow row : page.rows()) {
        Picture picture = free.get(children.size() % free.size());
        children.add(new NewChild(row.name(), picture.id(), picture.ground(), row.language(), row.rosterId()));
      }
      services.classes.addChildren(classroom.id(), children, services.now());
      services.live.changed(classroom.id());
      request.redirect("/setup", HttpStatus.SEE_OTHER);
    });
  }

  /** The drawings nobody has, or all of them again. */
  private static List<Picture> free(List<Child> there) {
    List<Picture> free = new ArrayList<>(Picture.ALL);
    free.removeIf(picture -> there.stream().anyMatch(child -> child.picture().equals(picture.id())));
    return free.isEmpty() ? Picture.ALL : free;
  }

  // ---- one child ----

  private Child childOf(Context request, Classroom classroom) {
    return TabletHandlers.number(request.pathParam("child"))
        .flatMap(id -> services.setups.child(classroom.id(), id)).orElseThrow(Refusal::notFound);
  }

  void child(Context request) {
    desk.inClass(request, classroom -> showChild(request, classroom, childOf(request, classroom), null));
  }

  private void showChild(Context request, Classroom classroom, Child child, String problem) {
    Optional<LocalDate> left = services.setups.left(classroom.id()).stream()
        .filter(each -> each.child().id() == child.id()).map(each -> each.on()).findFirst();
    desk.render(request, "teacher/child-setup", ChildSetupPage.of(child, left.orElse(null),
        services.records.request(child.id()).orElse(null),
        services.classes.children(classroom.id()), problem), desk.frame(classroom, Place.SETUP));
  }

  void change(Context request) {
    desk.inClass(request, classroom -> {
      Child child = childOf(request, classroom);
      String name = form(request, "name").strip().replaceAll("\\s+", " ");
      Optional<Picture> picture = Picture.of(form(request, "picture"));
      String language = form(request, "language").equals("es") ? "es" : "en";
      boolean taken = services.classes.children(classroom.id()).stream()
          .anyMatch(each -> each.id() != child.id() && each.name().equalsIgnoreCase(name));
      String problem = name.isEmpty() || name.length() > RosterReader.LONGEST_NAME
          ? "A first name of 1 to " + RosterReader.LONGEST_NAME + " characters was expected."
          : taken ? "There is a “" + name + "” in this class already. Add a letter, for example “" + name + " B.”."
          : picture.isEmpty() ? "A picture from the list was expected." : null;
      if (problem != null) {
        request.status(422);
        showChild(request, classroom, child, problem);
        return;
      }
      services.setups.change(new Child(child.id(), classroom.id(), name, picture.get().id(), picture.get().ground(),
          language));
      services.live.changed(classroom.id());
      request.redirect("/setup", HttpStatus.SEE_OTHER);
    });
  }

  void leave(Context request) {
    desk.inClass(request, classroom -> {
      services.setups.leave(classroom.id(), childOf(request, classroom).id(), services.today(classroom), services.now());
      services.live.changed(classroom.id());
      request.redirect("/setup#left", HttpStatus.SEE_OTHER);
    });
  }

  void comeBack(Context request) {
    desk.inClass(request, classroom -> {
      Child child = childOf(request, classroom);
      boolean taken = services.classes.children(classroom.id()).stream()
          .anyMatch(each -> each.name().equalsIgnoreCase(child.name()));
      if (taken) {
        request.status(422);
        showChild(request, classroom, child, "There is another “" + child.name()
            + "” in the class now. Change one of the two names first.");
        return;
      }
      services.setups.comeBack(classroom.id(), child.id());
      services.live.changed(classroom.id());
      request.redirect("/setup", HttpStatus.SEE_OTHER);
    });
  }

  // ---- erasing ----

  private static final String HELD = "A family’s request is open, so nothing may be erased now. Close it on the "
      + "child’s page in Records when the family has seen what is kept.";

  /** Erases a child after her name was typed. */
  void erase(Context request) {
    desk.inAnyClass(request, classroom -> {
      Child child = childOf(request, classroom);
      if (!form(request, "typed").strip().equalsIgnoreCase(child.name())) {
        request.status(422);
        showChild(request, classroom, child, "To erase, type the name “" + child.name() + "”. Nothing was erased.");
        return;
      }
      Erasing.Erased erased = services.erasing.child(classroom.id(), child.id());
      if (erased.fate() == Erasing.Fate.REQUEST_OPEN) {
        request.status(422);
        showChild(request, classroom, child, HELD);
        return;
      }
      services.live.changed(classroom.id());
      erased(request, classroom, child.name(), erased);
    });
  }

  private void erased(Context request, Classroom classroom, String what, Erasing.Erased erased) {
    desk.render(request, "teacher/erased", new YearPage.Erased(what, erased.remains()),
        classroom == null ? null : desk.frame(classroom, Place.SETUP));
  }

  // ---- the year ----

  void year(Context request) {
    desk.inAnyClass(request, classroom -> showYear(request, classroom, null));
  }

  private void showYear(Context request, Classroom classroom, String problem) {
    ClassSetup setup = services.setups.of(classroom.id());
    desk.render(request, "teacher/year", YearPage.of(classroom, setup, services.today(classroom),
        services.classes.children(classroom.id()).size() + services.setups.left(classroom.id()).size(), problem),
        desk.frame(classroom, Place.SETUP));
  }

  private void refuseYear(Context request, Classroom classroom, String problem) {
    request.status(422);
    showYear(request, classroom, problem);
  }

  void keepUntil(Context request) {
    desk.inAnyClass(request, classroom -> {
      Optional<LocalDate> until = day(form(request, "until"));
      if (until.isEmpty() && !form(request, "until").isBlank()) {
        refuseYear(request, classroom, "A day was expected, for example 2027-06-30.");
        return;
      }
      ClassSetup was = services.setups.of(classroom.id());
      services.setups.set(classroom.id(), classroom.name(), classroom.zone(), new ClassSetup(was.usualTries(),
          was.usualParts(), was.tellLater(), until.orElse(null), was.closedOn()));
      request.redirect("/setup/year", HttpStatus.SEE_OTHER);
    });
  }

  private static Optional<LocalDate> day(String text) {
    try {
      return text.isBlank() ? Optional.empty() : Optional.of(LocalDate.parse(text.strip()));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** The year is over: the class can only be read. A new class is made next. */
  void close(Context request) {
    desk.inAnyClass(request, classroom -> {
      ClassSetup was = services.setups.of(classroom.id());
      if (was.keptUntil() == null) {
        refuseYear(request, classroom, "Say first until when this class is kept.");
        return;
      }
      set(classroom, was, services.today(classroom));
      services.sittings.open(classroom.id()).forEach(each ->
          services.sittings.end(each.id(), "the year is over", services.now()));
      request.redirect("/welcome", HttpStatus.SEE_OTHER);
    });
  }

  void openAgain(Context request) {
    desk.inAnyClass(request, classroom -> {
      set(classroom, services.setups.of(classroom.id()), null);
      request.redirect("/setup/year", HttpStatus.SEE_OTHER);
    });
  }

  private void set(Classroom classroom, ClassSetup was, LocalDate closed) {
    services.setups.set(classroom.id(), classroom.name(), classroom.zone(), new ClassSetup(was.usualTries(),
        was.usualParts(), was.tellLater(), was.keptUntil(), closed));
  }

  /** Erases the whole class after its name was typed. */
  void eraseClass(Context request) {
    desk.inAnyClass(request, classroom -> {
      if (!form(request, "typed").strip().equalsIgnoreCase(classroom.name())) {
        refuseYear(request, classroom, "To erase, type the class’s name, “" + classroom.name() + "”. Nothing was erased.");
        return;
      }
      Erasing.Erased erased = services.erasing.classroom(desk.teacher(request), classroom.id());
      if (erased.fate() == Erasing.Fate.REQUEST_OPEN) {
        refuseYear(request, classroom, HELD);
        return;
      }
      services.sessions.endWhere(each -> each.substitute() && each.classroom() == classroom.id());
      erased(request, desk.classroom(request).orElse(null), classroom.name(), erased);
    });
  }
}
