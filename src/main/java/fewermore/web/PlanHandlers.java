package fewermore.web;

import static fewermore.web.TeacherHandlers.form;

import fewermore.classroom.AssignedProblem;
import fewermore.classroom.Child;
import fewermore.classroom.ClassSetup;
import fewermore.classroom.Classroom;
import fewermore.classroom.HandIn;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.PlannedSet;
import fewermore.marking.Marker;
import fewermore.marking.Part;
import fewermore.problem.NumberRange;
import fewermore.problem.Problem;
import fewermore.problem.ProblemWriter;
import fewermore.problem.ProblemsFile;
import fewermore.problem.ProposedMix;
import fewermore.problem.Regrouping;
import fewermore.problem.TypedProblem;
import fewermore.store.ProblemStore.NewProblem;
import fewermore.story.Comparison;
import fewermore.story.Kind;
import fewermore.story.Persons;
import fewermore.story.Role;
import fewermore.story.Thing;
import fewermore.story.Wording;
import fewermore.web.teacher.AmericanDates;
import fewermore.web.teacher.KindWords;
import fewermore.web.teacher.Place;
import fewermore.web.teacher.PlanPage;
import fewermore.web.teacher.Proposal;
import fewermore.web.teacher.SeveralPage;
import fewermore.web.teacher.SheetPage;
import fewermore.web.teacher.ShelfPage;
import fewermore.web.teacher.SpanishAsked;
import fewermore.web.teacher.TypePage;
import fewermore.wording.Correction;
import fewermore.wording.Correction.Use;
import fewermore.wording.ReadText;
import fewermore.wording.ReadText.Declined;
import fewermore.wording.ReadText.Understood;
import fewermore.wording.TeachersSpanish;
import fewermore.wording.WordingReader;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Plan: sets for a day, made, typed, ordered, given, kept and printed. */
final class PlanHandlers {
  private static final int SHELF = 60;

  private final Services services;
  private final TeacherHandlers desk;

  PlanHandlers(TeacherHandlers desk) {
    this.desk = desk;
    this.services = desk.services;
  }

  // ---- the day's sets ----

  void plan(Context request) {
    desk.inClass(request, classroom -> {
      LocalDate day = day(request.queryParam("day"), classroom);
      Optional<PlannedSet> set = chosen(classroom, day, request.queryParam("set"));
      show(request, classroom, day, set, ProposedMix.counts(PlanPage.PROPOSED), NumberRange.WITHIN_100,
          Regrouping.EITHER, null);
    });
  }

  void make(Context request) {
    desk.inClass(request, classroom -> {
      LocalDate day = day(request.formParam("day"), classroom);
      Optional<PlannedSet> set = openSet(request, classroom);
      NumberRange range = NumberRange.of("within-" + form(request, "within")).orElse(NumberRange.WITHIN_100);
      Regrouping regrouping = regrouping(form(request, "regroup"));
      boolean proposed = form(request, "mix").equals("proposed");
      int there = set.map(each -> each.set().problems().size()).orElse(0);
      List<Child> whom = whom(classroom, request.formParams("for"));
      List<Kind> kinds = proposed
          ? proposal(classroom, set.isPresent() ? childrenOf(classroom, set.get()) : whom,
              Math.max(1, Math.min(PlanPage.PROPOSED, PlanPage.MOST - there))).kinds()
          : ProposedMix.inOrder(counts(request));
      Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
      kinds.forEach(kind -> counts.merge(kind, 1, Integer::sum));
      int all = counts.values().stream().mapToInt(Integer::intValue).sum();
      if (all < 1 || there + all > PlanPage.MOST) {
        request.status(422);
        show(request, classroom, day, set, counts, range, regrouping, all < 1
            ? "From 1 to " + PlanPage.MOST + " problems were expected, this makes none. Change a count."
            : "A set has at most " + PlanPage.MOST + " problems. There " + (there == 1 ? "is " : "are ") + there
                + ", and this makes " + all + " more. Choose fewer, or take some out.");
        return;
      }
      Set<String> names = desk.namesOf(classroom);
      set.ifPresent(each -> each.set().problems().forEach(problem -> addNames(names, problem)));
      List<Problem> problems = new ProblemWriter(range, regrouping, names)
          .writeSet(kinds, services.tokens.below(Integer.MAX_VALUE)).problems();
      long into = put(classroom, day, set, problems.stream().map(NewProblem::of).toList());
      if (set.isEmpty() && !whom.isEmpty()) {
        services.plans.set(classroom.id(), into).map(PlannedSet::set).ifPresent(made -> services.plans.settle(
            classroom.id(), into, day, whom.stream().map(Child::id).toList(), made.tries(), made.tellLater(), made.asks()));
      }
      backTo(request, day, into);
    });
  }

  private Proposal proposal(Classroom classroom, List<Child> whom, int problems) {
    return Proposal.of(FindingsHandlers.found(services, classroom, services.today(classroom)).children(), whom, problems);
  }

  /** The children of this class among those an address or a form names. */
  private List<Child> whom(Classroom classroom, List<String> ids) {
    return ids.isEmpty() ? List.of() : services.classes.children(classroom.id()).stream()
        .filter(child -> ids.contains(Long.toString(child.id()))).toList();
  }

  private List<Child> childrenOf(Classroom classroom, PlannedSet set) {
    return set.children().isEmpty() ? List.of() : services.classes.children(classroom.id()).stream()
        .filter(child -> set.children().contains(child.id())).toList();
  }

  /** Adds problems to an open set, or makes one for them. */
  private long put(Classroom classroom, LocalDate day, Optional<PlannedSet> set, List<NewProblem> problems) {
    if (set.isPresent()) {
      if (!services.plans.add(classroom.id(), set.get().set().id(), problems, services.now())) {
        throw new Refusal(422, "A set has at most " + PlanPage.MOST + " problems. Take one out first. Nothing was added.");
      }
      return set.get().set().id();
    }
    ClassSetup usual = services.setups.of(classroom.id());
    return services.problems.addSet(classroom.id(), day, false, usual.usualTries(), usual.tellLater(),
        usual.usualParts(), problems, services.now()).id();
  }

  void replace(Context request) {
    desk.inClass(request, classroom -> {
      PlannedSet set = namedSet(request, classroom);
      AssignedProblem problem = namedProblem(request, set);
      Set<String> names = desk.namesOf(classroom);
      set.set().problems().forEach(each -> addNames(names, each));
      int largest = set.set().problems().stream().mapToInt(each -> each.story().amounts().total()).max().orElse(100);
      NumberRange range = largest <= 20 ? NumberRange.WITHIN_20
          : largest <= 50 ? NumberRange.WITHIN_50 : NumberRange.WITHIN_100;
      Problem other = new ProblemWriter(range, Regrouping.EITHER, names)
          .write(problem.kind(), services.tokens.below(Integer.MAX_VALUE));
      if (!services.problems.replace(classroom.id(), set.set().id(), problem.id(), NewProblem.of(other), services.now())) {
        throw given();
      }
      backTo(request, set);
    });
  }

  private static void addNames(Set<String> names, AssignedProblem problem) {
    names.add(String.valueOf(problem.story().persons().larger()));
    names.add(String.valueOf(problem.story().persons().smaller()));
  }

  void remove(Context request) {
    desk.inClass(request, classroom -> {
      PlannedSet set = namedSet(request, classroom);
      AssignedProblem problem = namedProblem(request, set);
      if (!services.plans.remove(classroom.id(), set.set().id(), problem.id())) {
        throw given();
      }
      backTo(request, set);
    });
  }

  void move(Context request) {
    desk.inClass(request, classroom -> {
      PlannedSet set = namedSet(request, classroom);
      AssignedProblem problem = namedProblem(request, set);
      int by = form(request, "by").equals("up") ? -1 : 1;
      if (!services.plans.move(classroom.id(), set.set().id(), problem.id(), by)) {
        throw given();
      }
      backTo(request, set);
    });
  }

  void settle(Context request) {
    desk.inClass(request, classroom -> {
      PlannedSet set = namedSet(request, classroom);
      LocalDate day = set.given() ? set.set().day() : day(request.formParam("new-day"), classroom);
      int tries = TabletHandlers.number(form(request, "tries")).filter(each -> each >= 1 && each <= PlanPage.MOST_TRIES)
          .orElseThrow(() -> new Refusal(422, "From 1 to " + PlanPage.MOST_TRIES + " tries were expected. Choose one."))
          .intValue();
      Set<Part> parts = EnumSet.noneOf(Part.class);
      request.formParams("part").forEach(id -> Part.of(id).ifPresent(parts::add));
      if (parts.isEmpty()) {
        throw new Refusal(422, "At least one part of the work must be asked. Choose one, for example the equation.");
      }
      List<Long> children = request.formParams("child").stream()
          .flatMap(id -> TabletHandlers.number(id).stream()).toList();
      services.plans.settle(classroom.id(), set.set().id(), day, children, tries,
          !form(request, "tell-later").isEmpty(), parts);
      services.live.changed(classroom.id());
      backTo(request, day, set.set().id());
    });
  }

  void putAway(Context request) {
    desk.inClass(request, classroom -> {
      PlannedSet set = namedSet(request, classroom);
      if (!services.problems.putAway(classroom.id(), set.set().id())) {
        throw given();
      }
      request.redirect("/plan?day=" + set.set().day(), HttpStatus.SEE_OTHER);
    });
  }

  void give(Context request) {
    desk.inClass(request, classroom -> {
      PlannedSet set = namedSet(request, classroom);
      if (set.set().problems().isEmpty()) {
        throw new Refusal(422, "There is no problem in this set yet. Make or type one first.");
      }
      for (Child child : services.classes.children(classroom.id())) {
        int there = services.plans.sets(classroom.id(), set.set().day()).stream()
            .filter(each -> each.given() && each.isFor(child.id())).mapToInt(each -> each.set().problems().size()).sum();
        if (set.isFor(child.id()) && there + set.set().problems().size() > PlanPage.MOST) {
          request.status(422);
          show(request, classroom, set.set().day(), Optional.of(set), ProposedMix.counts(PlanPage.PROPOSED),
              NumberRange.WITHIN_100, Regrouping.EITHER, child.name() + " already has " + there + " of at most "
                  + PlanPage.MOST + " problems for that day; there is room for " + (PlanPage.MOST - there)
                  + " more. Take some out, or choose another day.");
          return;
        }
      }
      services.problems.give(classroom.id(), set.set().id());
      services.live.changed(classroom.id());
      request.redirect(set.set().day().equals(services.today(classroom)) ? "/board"
          : "/plan?day=" + set.set().day() + "&set=" + set.set().id(), HttpStatus.SEE_OTHER);
    });
  }

  void keep(Context request) {
    desk.inClass(request, classroom -> {
      PlannedSet set = namedSet(request, classroom);
      boolean kept = !form(request, "kept").equals("no");
      String name = form(request, "name").strip();
      if (name.length() > 80) {
        throw new Refusal(422, "A name of at most 80 characters was expected. Shorten it.");
      }
      services.plans.keep(classroom.id(), set.set().id(), kept, kept ? name : set.name());
      if (form(request, "back").equals("shelf")) {
        request.redirect("/plan/sets", HttpStatus.SEE_OTHER);
      } else {
        backTo(request, set);
      }
    });
  }

  void copy(Context request) {
    desk.inClass(request, classroom -> {
      PlannedSet set = namedSet(request, classroom);
      LocalDate day = day(request.formParam("new-day"), classroom);
      long made = services.plans.copy(classroom.id(), set.set().id(), day, services.now()).orElseThrow(Refusal::notFound);
      backTo(request, day, made);
    });
  }

  void shelf(Context request) {
    desk.inClass(request, classroom -> desk.render(request, "teacher/shelf",
        ShelfPage.of(services.today(classroom), services.plans.shelf(classroom.id(), SHELF)),
        desk.frame(classroom, Place.PLAN)));
  }

  void sheet(Context request) {
    paper(request, "teacher/sheet");
  }

  void key(Context request) {
    paper(request, "teacher/key");
  }

  private void paper(Context request, String page) {
    desk.inClass(request, classroom -> {
      PlannedSet set = TabletHandlers.number(String.valueOf(request.queryParam("set")))
          .flatMap(id -> services.plans.set(classroom.id(), id)).orElseThrow(Refusal::notFound);
      desk.render(request, page, SheetPage.of(classroom.name(), set.set(), "es".equals(request.queryParam("language"))),
          desk.frame(classroom, Place.PLAN));
    });
  }

  // ---- a problem of her own ----

  void type(Context request) {
    desk.inClass(request, classroom -> {
      LocalDate day = day(request.queryParam("day"), classroom);
      long set = TabletHandlers.number(String.valueOf(request.queryParam("set"))).orElse(0L);
      Optional<AssignedProblem> edited = TabletHandlers.number(String.valueOf(request.queryParam("problem")))
          .flatMap(id -> services.plans.problem(classroom.id(), id));
      String text = edited.map(AssignedProblem::text).orElse("");
      ReadText read = WordingReader.read(text);
      Correction roles = edited.isPresent() ? TypedProblem.roles(read, edited.get().story()) : Correction.of(read);
      if (edited.isPresent() && !(read instanceof Understood sure && sure.story().equals(edited.get().story()))) {
        read = WordingReader.corrected(read, roles);
      }
      showTyped(request, typed(request, classroom, day, set, edited.map(AssignedProblem::id).orElse(0L), read, roles,
          null), classroom);
    });
  }

  /** What her text is understood to say: the whole page, or only what changes while she types. */
  void look(Context request) {
    desk.inClass(request, classroom -> {
      TypePage page = typedForm(request, classroom, null);
      if (form(request, "piece").equals("yes")) {
        desk.render(request, "teacher/seen", page, desk.frame(classroom, Place.PLAN));
      } else {
        showTyped(request, page, classroom);
      }
    });
  }

  void keepTyped(Context request) {
    desk.inClass(request, classroom -> {
      TypePage page = typedForm(request, classroom, null);
      if (!(page.read() instanceof Understood sure)) {
        request.status(422);
        showTyped(request, typedForm(request, classroom, page.empty() ? "Type the problem first."
            : "This is not understood yet, so it can’t be marked. Change the text, or say yourself what each number is."),
            classroom);
        return;
      }
      TypedProblem typed = new TypedProblem(sure);
      services.spanish.keep(desk.teacher(request), page.inSpanish().given(), services.now());
      LocalDate day = LocalDate.parse(page.day());
      if (page.edits()) {
        edit(request, classroom, page, typed);
      } else {
        Optional<PlannedSet> set = services.plans.set(classroom.id(), page.into()).filter(each -> !each.given());
        backTo(request, day, put(classroom, day, set, List.of(NewProblem.of(typed.problem(page.inSpanish().words())))));
      }
    });
  }

  private void edit(Context request, Classroom classroom, TypePage page, TypedProblem typed) {
    AssignedProblem before = services.plans.problem(classroom.id(), page.problem()).orElseThrow(Refusal::notFound);
    boolean sameText = squeezed(before.text()).equals(squeezed(typed.read().text()));
    Optional<PlannedSet> set = services.plans.set(classroom.id(), page.into());
    LocalDate day = LocalDate.parse(page.day());
    NewProblem version = NewProblem.of(typed.problem(page.inSpanish().words()));
    boolean spanishGiven = before.spanish().isEmpty() && !version.spanish().isEmpty();
    if (sameText && typed.story().equals(before.story()) && !spanishGiven) {
      backTo(request, day, page.into());
    } else if (sameText && !typed.story().equals(before.story())) {
      int changes = childrenWhoseMarksChange(classroom, before, typed.story());
      if (changes > 0 && !form(request, "sure").equals("yes")) {
        showTyped(request, new TypePage(page.day(), page.dayWords(), page.into(), page.problem(), page.withWork(), changes,
            page.read(), page.roles(), null, page.inSpanish()), classroom);
        return;
      }
      if (!services.plans.setRoles(classroom.id(), before.id(), typed.story(), desk.teacher(request), services.now())) {
        throw new Refusal(422, "The numbers of a problem stay as they are. Only what they stand for can be changed.");
      }
      services.works.markProblemAgain(classroom.id(), before.id());
      services.live.changed(classroom.id());
      backTo(request, day, page.into());
    } else {
      long into = set.map(each -> each.set().id()).orElseThrow(Refusal::notFound);
      if (!services.problems.replace(classroom.id(), into, before.id(), version, services.now())) {
        services.plans.newVersion(classroom.id(), into, before.id(), version, services.now())
            .orElseThrow(Refusal::notFound);
        services.live.changed(classroom.id());
      }
      backTo(request, day, into);
    }
  }

  private static String squeezed(String text) {
    return text.strip().replaceAll("\\s+", " ");
  }

  private int childrenWhoseMarksChange(Classroom classroom, AssignedProblem problem, Comparison story) {
    TeachersSpanish spanish = services.spanish.of(classroom.teacher());
    int children = 0;
    for (PieceOfWork piece : services.works.pieces(classroom.id())) {
      if (piece.problem().id() == problem.id()
          && piece.handIns().stream().anyMatch(each -> changes(each, problem, story, spanish))) {
        children++;
      }
    }
    return children;
  }

  private static boolean changes(HandIn handIn, AssignedProblem problem, Comparison story, TeachersSpanish spanish) {
    return !Marker.mark(problem.story(), handIn.parts(), spanish).equals(Marker.mark(story, handIn.parts(), spanish));
  }

  private TypePage typedForm(Context request, Classroom classroom, String trouble) {
    LocalDate day = day(request.formParam("day"), classroom);
    long set = TabletHandlers.number(form(request, "set")).orElse(0L);
    long problem = TabletHandlers.number(form(request, "problem")).orElse(0L);
    String text = form(request, "text").replace("\r\n", "\n");
    text = text.length() > WordingReader.LONGEST + 1 ? text.substring(0, WordingReader.LONGEST + 1) : text;
    ReadText read = WordingReader.read(text);
    Correction own = Correction.of(read);
    Correction roles = own;
    if (form(request, "roles-of").replace("\r\n", "\n").equals(text)) {
      roles = tapped(fields(request, read, own), form(request, "tap"));
    }
    if (!roles.equals(own) && !read.numbers().isEmpty()) {
      read = WordingReader.corrected(read, roles);
    }
    return typed(request, classroom, day, set, problem, read, roles, trouble);
  }

  private TypePage typed(Context request, Classroom classroom, LocalDate day, long set, long problem, ReadText read,
      Correction roles, String trouble) {
    int withWork = problem == 0 ? 0 : services.plans.childrenWithWork(classroom.id(), problem);
    return new TypePage(day.toString(), AmericanDates.longDay(day), set, problem, withWork, -1, read, roles, trouble,
        read instanceof Understood sure ? SpanishAsked.of(new TypedProblem(sure),
            services.spanish.of(desk.teacher(request)), field -> form(request, field)) : SpanishAsked.NOTHING);
  }

  private void showTyped(Context request, TypePage page, Classroom classroom) {
    desk.render(request, "teacher/type", page, desk.frame(classroom, Place.PLAN));
  }

  /** The roles as the form has them; what the form leaves out stays as read. */
  private static Correction fields(Context request, ReadText read, Correction own) {
    List<Use> uses = new ArrayList<>();
    for (int i = 0; i < read.numbers().size(); i++) {
      uses.add(Use.of(form(request, "use-" + i)).orElse(own.numbers().get(i)));
    }
    Thing thing = thing(form(request, "one"), form(request, "many"));
    Thing other = thing(form(request, "other-one"), form(request, "other-many"));
    return new Correction(uses, Role.of(form(request, "unknown")).orElse(null),
        Wording.of(form(request, "wording")).orElse(null),
        new Persons(name(form(request, "larger")), name(form(request, "smaller"))), thing, other);
  }

  private static String name(String typed) {
    String name = typed.strip();
    return name.isEmpty() ? null : name.length() > 60 ? name.substring(0, 60) : name;
  }

  private static Thing thing(String one, String many) {
    String single = name(one);
    String several = name(many);
    return single == null && several == null ? null
        : new Thing(single == null ? several : single, several == null ? single : several);
  }

  /** The next use of what she tapped. */
  private static Correction tapped(Correction roles, String tap) {
    if (tap.startsWith("number-")) {
      int index = TabletHandlers.number(tap.substring(7)).orElse(-1L).intValue();
      if (index < 0 || index >= roles.numbers().size()) {
        return roles;
      }
      Use[] uses = Use.values();
      return roles.withNumber(index, uses[(roles.numbers().get(index).ordinal() + 1) % uses.length]);
    }
    return switch (tap) {
      case "turn" -> roles.turned();
      case "unknown" -> roles.withUnknown(
          roles.unknown() == null ? Role.LARGER : Role.values()[(roles.unknown().ordinal() + 1) % Role.values().length]);
      case "wording" -> roles.withWording(roles.wording() == Wording.MORE ? Wording.FEWER : Wording.MORE);
      default -> roles;
    };
  }

  // ---- several at once ----

  void several(Context request) {
    desk.inClass(request, classroom -> {
      LocalDate day = day(request.queryParam("day"), classroom);
      long set = TabletHandlers.number(String.valueOf(request.queryParam("set"))).orElse(0L);
      showSeveral(request, classroom, day, set, "", null);
    });
  }

  void addSeveral(Context request) {
    desk.inClass(request, classroom -> {
      LocalDate day = day(request.formParam("day"), classroom);
      long setId = TabletHandlers.number(form(request, "set")).orElse(0L);
      String text = severalText(request);
      if (!form(request, "do").equals("add")) {
        showSeveral(request, classroom, day, setId, text, text.isBlank() ? "Paste the problems, or choose a file." : null);
        return;
      }
      TeachersSpanish own = services.spanish.of(desk.teacher(request));
      List<NewProblem> problems = WordingReader.readAll(text).stream()
          .filter(each -> each.read() instanceof Understood)
          .map(each -> NewProblem.of(new TypedProblem((Understood) each.read()).problem(own))).toList();
      Optional<PlannedSet> set = services.plans.set(classroom.id(), setId).filter(each -> !each.given());
      int room = PlanPage.MOST - set.map(each -> each.set().problems().size()).orElse(0);
      if (problems.isEmpty() || problems.size() > room) {
        request.status(422);
        showSeveral(request, classroom, day, setId, text, problems.isEmpty()
            ? "None of these is understood yet. Set one right below, or change the text."
            : "A set has at most " + PlanPage.MOST + " problems; there is room for " + room + ", and these are "
                + problems.size() + ". Take some out of the text.");
        return;
      }
      backTo(request, day, put(classroom, day, set, problems));
    });
  }

  private static String severalText(Context request) {
    try {
      var file = request.uploadedFile("file");
      if (file != null && file.size() > 0) {
        return ProblemsFile.paragraphs(new String(file.content().readAllBytes(), StandardCharsets.UTF_8));
      }
      return ProblemsFile.paragraphs(form(request, "text").replace("\r\n", "\n"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void showSeveral(
      Context request, Classroom classroom, LocalDate day, long set, String text, String problem) {
    List<SeveralPage.Line> lines = new ArrayList<>();
    for (WordingReader.Paragraph each : WordingReader.readAll(text)) {
      lines.add(line(lines.size() + 1, each.read()));
    }
    int there = services.plans.set(classroom.id(), set).map(each -> each.set().problems().size()).orElse(0);
    desk.render(request, "teacher/several", new SeveralPage(day.toString(), AmericanDates.longDay(day), set,
        PlanPage.MOST - there, text, lines, problem), desk.frame(classroom, Place.PLAN));
  }

  private static SeveralPage.Line line(int number, ReadText read) {
    return read.match(new ReadText.Cases<>() {
      @Override
      public SeveralPage.Line understood(Understood sure) {
        Comparison story = sure.story();
        return new SeveralPage.Line(number, sure.text().strip(), true,
            "The answer is " + story.answer() + " " + story.thing().many() + ".", KindWords.of(story));
      }

      @Override
      public SeveralPage.Line declined(Declined declined) {
        return new SeveralPage.Line(number, declined.text().strip(), false, declined.says(), null);
      }
    });
  }

  // ---- small things ----

  private void show(Context request, Classroom classroom, LocalDate day, Optional<PlannedSet> set,
      Map<Kind, Integer> counts, NumberRange range, Regrouping regrouping, String problem) {
    Set<Long> problems = set.stream().flatMap(each -> each.set().problems().stream()).map(AssignedProblem::id)
        .collect(Collectors.toSet());
    int withWork = set.isEmpty() || !set.get().given() ? 0
        : (int) services.works.pieces(classroom.id(), set.get().set().day().minusDays(1).atStartOfDay(classroom.zone()).toInstant())
            .stream().filter(piece -> problems.contains(piece.problem().id())).map(piece -> piece.child().id()).distinct().count();
    desk.render(request, "teacher/plan", PlanPage.of(day, services.plans.sets(classroom.id(), day), set.orElse(null),
        counts, range.limit(), said(regrouping), services.classes.children(classroom.id()), withWork, problem),
        desk.frame(classroom, Place.PLAN), Map.of("proposal", proposal(classroom,
            set.isPresent() && !set.get().given() ? childrenOf(classroom, set.get())
                : whom(classroom, request.method() == HandlerType.GET ? request.queryParams("for") : request.formParams("for")),
            PlanPage.PROPOSED)));
  }

  /** The set she asked for, else the day's newest; none where she asks for a new one. */
  private Optional<PlannedSet> chosen(Classroom classroom, LocalDate day, String asked) {
    List<PlannedSet> sets = services.plans.sets(classroom.id(), day);
    if ("new".equals(asked) || sets.isEmpty()) {
      return Optional.empty();
    }
    Optional<Long> id = TabletHandlers.number(String.valueOf(asked));
    return sets.stream().filter(each -> id.isPresent() && each.set().id() == id.get()).findFirst()
        .or(() -> Optional.of(sets.get(sets.size() - 1)));
  }

  private PlannedSet namedSet(Context request, Classroom classroom) {
    return TabletHandlers.number(form(request, "set")).flatMap(id -> services.plans.set(classroom.id(), id))
        .orElseThrow(Refusal::notFound);
  }

  /** The set of the form while it is not given; one that was given stays and a new one starts beside it. */
  private Optional<PlannedSet> openSet(Context request, Classroom classroom) {
    return TabletHandlers.number(form(request, "set")).flatMap(id -> services.plans.set(classroom.id(), id))
        .filter(each -> !each.given());
  }

  private static AssignedProblem namedProblem(Context request, PlannedSet set) {
    long id = TabletHandlers.number(form(request, "problem")).orElseThrow(Refusal::notFound);
    return set.set().problems().stream().filter(each -> each.id() == id).findFirst().orElseThrow(Refusal::notFound);
  }

  private static Refusal given() {
    return new Refusal(422, "The children already have this set. Its problems stay as they are.");
  }

  private static void backTo(Context request, PlannedSet set) {
    backTo(request, set.set().day(), set.set().id());
  }

  private static void backTo(Context request, LocalDate day, long set) {
    request.redirect("/plan?day=" + day + "&set=" + set, HttpStatus.SEE_OTHER);
  }

  /** The day that was said; today where none was, or none that can be read. */
  private LocalDate day(String said, Classroom classroom) {
    try {
      LocalDate day = said == null || said.isEmpty() ? services.today(classroom) : LocalDate.parse(said);
      return day.getYear() < 2000 || day.getYear() > 2200 ? services.today(classroom) : day;
    } catch (DateTimeParseException e) {
      return services.today(classroom);
    }
  }

  private static Map<Kind, Integer> counts(Context request) {
    Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
    for (Kind kind : Kind.values()) {
      counts.put(kind, TabletHandlers.number(form(request, kind.id())).filter(count -> count >= 0 && count <= 99)
          .orElse(0L).intValue());
    }
    return counts;
  }

  private static Regrouping regrouping(String said) {
    return switch (said) {
      case "yes" -> Regrouping.NEEDED;
      case "no" -> Regrouping.NOT_NEEDED;
      default -> Regrouping.EITHER;
    };
  }

  private static String said(Regrouping regrouping) {
    return switch (regrouping) {
      case NEEDED -> "yes";
      case NOT_NEEDED -> "no";
      case EITHER -> "either";
    };
  }
}
