package fewermore.web;

import static fewermore.web.TeacherHandlers.form;

import fewermore.classroom.Classroom;
import fewermore.store.RecordStore;
import fewermore.store.SetupStore.Substitute;
import fewermore.store.TeacherStore.Teacher;
import fewermore.web.teacher.ClassesPage;
import fewermore.web.teacher.PeoplePage;
import fewermore.web.teacher.Place;
import fewermore.web.teacher.SignInPage;
import fewermore.web.teacher.TodayPage;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Who may sign in at this laptop, and which class is open: teachers, their passphrases, a substitute. */
final class PeopleHandlers {
  private static final int LONGEST_NAME = 80;

  private final TeacherHandlers desk;
  private final Services services;

  PeopleHandlers(TeacherHandlers desk) {
    this.desk = desk;
    this.services = desk.services;
  }

  // ---- signing in ----

  void signInPage(Context request) {
    if (services.teachers.first().isEmpty()) {
      request.redirect("/first", HttpStatus.SEE_OTHER);
      return;
    }
    showSignIn(request, null, null);
  }

  /** Everybody who may sign in; with one teacher and no substitute nobody is asked who she is. */
  private List<SignInPage.Person> people() {
    List<SignInPage.Person> people = new ArrayList<>();
    services.teachers.all().forEach(each -> people.add(new SignInPage.Person("t" + each.id(), each.name())));
    services.setups.substitutes().forEach(each ->
        people.add(new SignInPage.Person("s" + each.classroom(), "Substitute for " + each.className())));
    return people;
  }

  private void showSignIn(Context request, String chosen, String problem) {
    desk.render(request, "teacher/sign-in", new SignInPage(problem, people(), chosen), null,
        services.backups.justPutBack().map(said -> Map.<String, Object>of("said", said)).orElse(Map.of()));
  }

  void signIn(Context request) {
    Teacher first = services.teachers.first().orElseThrow(Refusal::notFound);
    String who = form(request, "who").isEmpty() ? "t" + first.id() : form(request, "who");
    long seconds = services.sessions.untilNextTry().toSeconds();
    if (seconds > 0) {
      request.status(429);
      request.header("Retry-After", Long.toString(seconds));
      showSignIn(request, who, pause(seconds));
      return;
    }
    String passphrase = form(request, "passphrase");
    Optional<Teacher> teacher = services.teachers.all().stream().filter(each -> who.equals("t" + each.id())).findFirst();
    Optional<Substitute> substitute =
        services.setups.substitutes().stream().filter(each -> who.equals("s" + each.classroom())).findFirst();
    String hash = teacher.map(Teacher::passphrase).or(() -> substitute.map(Substitute::passphrase)).orElse(null);
    if (hash == null || passphrase.length() > Passphrases.LONGEST || !Passphrases.fits(passphrase, hash)) {
      services.sessions.wrong();
      request.status(422);
      showSignIn(request, who, (services.teachers.all().size() + services.setups.substitutes().size() > 1
          ? "That is not the passphrase of the one chosen below. Choose who you are, look at capital letters"
          : "That is not the passphrase. Look at capital letters") + " and try again.");
      return;
    }
    services.sessions.right();
    services.sessions.end(TeacherHandlers.visitor(request));
    if (teacher.isPresent()) {
      TeacherHandlers.setDesk(request, services.sessions.start(teacher.get().id()));
      request.redirect("/plan", HttpStatus.SEE_OTHER);
    } else {
      TeacherHandlers.setDesk(request, services.sessions.startSubstitute(
          substitute.orElseThrow().teacher(), substitute.get().classroom()));
      request.redirect("/today", HttpStatus.SEE_OTHER);
    }
  }

  // ---- which class ----

  void classes(Context request) {
    desk.inAnyClass(request, classroom -> desk.render(request, "teacher/classes",
        ClassesPage.of(classroom, services.classesOf(desk.teacher(request)), services.setups.closed()),
        desk.frame(classroom, null)));
  }

  /** Changing class asks first: the door, the Room and every count are then another class's. */
  void askToChange(Context request) {
    Classroom other = desk.ownClass(request);
    desk.inAnyClass(request, classroom -> desk.render(request, "teacher/change-class",
        new ClassesPage.Change(classroom.name(), other.id(), other.name(), services.classes.children(other.id()).size()),
        desk.frame(classroom, null)));
  }

  // ---- people ----

  void people(Context request) {
    desk.inAnyClass(request, classroom -> showPeople(request, classroom, null, null));
  }

  private void showPeople(Context request, Classroom classroom, String about, String problem) {
    Teacher teacher = services.teachers.find(desk.teacher(request)).orElseThrow();
    desk.render(request, "teacher/people", new PeoplePage(teacher.name(),
        services.teachers.all().stream().filter(each -> each.id() != teacher.id()).map(Teacher::name).toList(),
        services.setups.substitute(classroom.id()).isPresent(),
        services.setups.substitute(classroom.id()).map(Substitute::note).orElse(""),
        classroom.name(), services.settings.data().toAbsolutePath().normalize().toString(), about, problem),
        desk.frame(classroom, Place.SETUP));
  }

  private void refuse(Context request, Classroom classroom, String about, String problem) {
    request.status(422);
    showPeople(request, classroom, about, problem);
  }

  void rename(Context request) {
    desk.inAnyClass(request, classroom -> {
      String name = form(request, "name").strip();
      Optional<String> problem = nameProblem(name, desk.teacher(request));
      if (problem.isPresent()) {
        refuse(request, classroom, "name", problem.get());
        return;
      }
      services.teachers.rename(desk.teacher(request), name);
      request.redirect("/setup/people", HttpStatus.SEE_OTHER);
    });
  }

  private Optional<String> nameProblem(String name, long teacher) {
    if (name.isEmpty() || name.length() > LONGEST_NAME) {
      return Optional.of("A name of 1 to " + LONGEST_NAME + " characters was expected, for example Ms. Adeyemi.");
    }
    boolean taken = services.teachers.all().stream()
        .anyMatch(each -> each.id() != teacher && each.name().equalsIgnoreCase(name));
    return taken ? Optional.of("Another teacher here is called that. Add a first name.") : Optional.empty();
  }

  /** Every other session of hers ends with the old passphrase. */
  void changePassphrase(Context request) {
    desk.inAnyClass(request, classroom -> {
      Teacher teacher = services.teachers.find(desk.teacher(request)).orElseThrow();
      long seconds = services.sessions.untilNextTry().toSeconds();
      if (seconds > 0) {
        refuse(request, classroom, "passphrase", pause(seconds));
        return;
      }
      String old = form(request, "old");
      if (old.length() > Passphrases.LONGEST || !Passphrases.fits(old, teacher.passphrase())) {
        services.sessions.wrong();
        refuse(request, classroom, "passphrase", "That is not the passphrase you have now. Try again.");
        return;
      }
      Optional<String> problem = Passphrases.problem(form(request, "passphrase"), form(request, "again"));
      if (problem.isPresent()) {
        refuse(request, classroom, "passphrase", problem.get());
        return;
      }
      services.sessions.right();
      services.teachers.changePassphrase(teacher.id(), Passphrases.hash(form(request, "passphrase")));
      services.sessions.endWhere(each -> each.teacher() == teacher.id() && !each.substitute());
      String cookie = services.sessions.start(teacher.id());
      services.sessions.look(cookie, classroom.id());
      TeacherHandlers.setDesk(request, cookie);
      request.redirect("/setup/people", HttpStatus.SEE_OTHER);
    });
  }

  void addTeacher(Context request) {
    desk.inAnyClass(request, classroom -> {
      String name = form(request, "name").strip();
      Optional<String> problem = nameProblem(name, -1)
          .or(() -> Passphrases.problem(form(request, "passphrase"), form(request, "again")));
      if (problem.isPresent()) {
        refuse(request, classroom, "teacher", problem.get());
        return;
      }
      services.teachers.add(name, Passphrases.hash(form(request, "passphrase")), false, services.now());
      request.redirect("/setup/people", HttpStatus.SEE_OTHER);
    });
  }

  // ---- the substitute ----

  void letSubstituteIn(Context request) {
    desk.inClass(request, classroom -> {
      Optional<String> problem = Passphrases.problem(form(request, "passphrase"), form(request, "again"));
      if (problem.isPresent()) {
        refuse(request, classroom, "substitute", problem.get());
        return;
      }
      services.setups.letIn(classroom.id(), Passphrases.hash(form(request, "passphrase")), services.now());
      endSubstitutes(classroom.id());
      request.redirect("/setup/people", HttpStatus.SEE_OTHER);
    });
  }

  void tellSubstitute(Context request) {
    desk.inClass(request, classroom -> {
      String note = form(request, "note").strip();
      if (note.length() > RecordStore.LONGEST_NOTE) {
        refuse(request, classroom, "substitute",
            "At most " + RecordStore.LONGEST_NOTE + " characters were expected. Shorten it.");
        return;
      }
      services.setups.tellSubstitute(classroom.id(), note);
      request.redirect("/setup/people", HttpStatus.SEE_OTHER);
    });
  }

  void takeSubstituteBack(Context request) {
    desk.inAnyClass(request, classroom -> {
      services.setups.takeBack(classroom.id());
      endSubstitutes(classroom.id());
      request.redirect("/setup/people", HttpStatus.SEE_OTHER);
    });
  }

  private void endSubstitutes(long classroom) {
    services.sessions.endWhere(each -> each.substitute() && each.classroom() == classroom);
  }

  /** Today's set and what to do: what a substitute has, and what the teacher prints for her. */
  void today(Context request) {
    desk.inAnyClass(request, classroom -> desk.render(request, "teacher/today",
        TodayPage.of(classroom.name(), services.today(classroom),
            services.problems.given(classroom.id(), services.today(classroom)),
            services.reach.address().orElse(null),
            services.setups.substitute(classroom.id()).map(Substitute::note).orElse("")),
        desk.frame(classroom, Place.TODAY), Map.of()));
  }

  private static String pause(long seconds) {
    return "Wait " + seconds + (seconds == 1 ? " second" : " seconds") + ", then try once more.";
  }
}
