package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.ClassGroups;
import fewermore.classroom.GroupWords;
import fewermore.classroom.PieceOfWork;
import fewermore.classroom.SeatedPair;
import fewermore.problem.Problem;
import fewermore.problem.ProblemWriter;
import fewermore.reasoning.Focus;
import fewermore.reasoning.GroupPlace;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Whom to sit with today: {@code pages/teacher/groups.html}, {@code GET /groups}; prints one group after the other. Moving
 * a child posts {@code child} and {@code place} to {@code /groups/move}; {@code /groups/anew} proposes again; pairs post
 * {@code one}, {@code other} and {@code together} to {@code /groups/pairs}.
 *
 * @param kept whether a child was moved by hand, so that the groups stay as they are
 * @param moved who sits elsewhere than the day before, with the reason
 */
public record GroupsPage(
    String day, boolean work, boolean kept, List<GroupView> groups, List<Choice> places, List<Moved> moved,
    List<PairView> pairs, List<Choice> children) {

  /**
   * @param first the first problem, which each is likely to do well; {@code then} the one that tells most
   * @param size what is to be said when a move left fewer than three or more than six, or empty
   * @param plan Plan with these children chosen; empty where nobody sits
   */
  public record GroupView(String id, String name, String why, boolean own, List<Member> members, String first,
      String then, String ask, String size, String plan) {}

  /**
   * @param said what the work says so far; {@code line} her own equation, or null
   * @param nothing what stands in its place where no work counts
   */
  public record Member(ShownChild child, String said, WrittenLine line, boolean blank, String href, String place,
      boolean byHand, boolean makesThree, boolean moved, String nothing) {}

  public record Choice(String id, String word) {}

  public record Moved(ShownChild child, String why) {}

  public record PairView(long one, long other, String words) {}

  public static GroupsPage of(LocalDate day, ClassGroups groups, Collection<SeatedPair> pairs, Collection<Child> children,
      ProblemWriter writer) {
    List<GroupView> views = new ArrayList<>();
    List<Moved> moved = new ArrayList<>();
    boolean work = false;
    for (ClassGroups.Group group : groups.groups()) {
      List<Member> members = new ArrayList<>();
      for (ClassGroups.Seat seat : group.children()) {
        PieceOfWork quote = seat.quote();
        work |= quote != null;
        String equation = quote == null || quote.evidence().parts().equation() == null ? ""
            : quote.evidence().parts().equation();
        String answer = quote == null || quote.evidence().parts().answer() == null ? "" : quote.evidence().parts().answer();
        String written = equation.isBlank() ? answer : equation;
        members.add(new Member(ShownChild.of(seat.child()), GroupWords.said(seat.reasoning()), WrittenLine.of(written),
            written.isBlank(), quote == null ? null : FindingsPage.href(quote.evidence()), group.place().id(),
            seat.byHand(), seat.makesThree(), seat.moved() != null,
            seat.reasoning().work().isEmpty() ? "no work" : "no work of one’s own"));
        if (seat.moved() != null) {
          moved.add(new Moved(ShownChild.of(seat.child()), seat.moved()));
        }
      }
      Problem first = writer.write(group.well(), seed(day, views.size(), 0));
      boolean own = group.place().focus() == Focus.ON_THEIR_OWN;
      views.add(new GroupView(group.place().id(), name(group.place()), GroupWords.why(group.place().focus()), own, members,
          text(first), text(writer.write(group.telling(), seed(day, views.size(), 1))),
          GroupWords.ask(group.place().focus(), first.story()),
          (own || members.size() >= 3 && members.size() <= 6 ? "" : "A group works best with three to six. ") + apart(group, pairs),
          plan(group)));
    }
    Map<Long, String> names = new TreeMap<>();
    children.forEach(child -> names.put(child.id(), child.name()));
    return new GroupsPage(AmericanDates.day(day), work, groups.kept(), views, places(groups), moved,
        pairs.stream().filter(pair -> names.containsKey(pair.one()) && names.containsKey(pair.other()))
            .map(pair -> new PairView(pair.one(), pair.other(), names.get(pair.one()) + " and " + names.get(pair.other())
                + (pair.together() ? ": together" : ": apart"))).toList(),
        children.stream().map(child -> new Choice(Long.toString(child.id()), child.name())).toList());
  }

  /** Says which pairs to be kept apart sit together here: groups the teacher made stay, and so may such a pair. */
  private static String apart(ClassGroups.Group group, Collection<SeatedPair> pairs) {
    Map<Long, String> names = new TreeMap<>();
    group.children().forEach(seat -> names.put(seat.child().id(), seat.child().name()));
    return group.place().focus() == Focus.ON_THEIR_OWN ? "" : pairs.stream()
        .filter(pair -> !pair.together() && names.containsKey(pair.one()) && names.containsKey(pair.other()))
        .map(pair -> names.get(pair.one()) + " and " + names.get(pair.other()) + " are to be kept apart: move one, or propose anew.")
        .collect(Collectors.joining(" "));
  }

  private static String plan(ClassGroups.Group group) {
    return group.children().isEmpty() ? "" : group.children().stream()
        .map(seat -> "&for=" + seat.child().id()).collect(Collectors.joining("", "/plan?set=new", ""));
  }

  /** The same each time the page is shown on that day. */
  private static long seed(LocalDate day, int group, int which) {
    return day.toEpochDay() * 100 + group * 10L + which;
  }

  private static String text(Problem problem) {
    return problem.english().text();
  }

  private static String name(GroupPlace place) {
    return GroupWords.name(place.focus()) + (place.number() == 1 ? "" : " (" + place.number() + ")");
  }

  /** Every place there is today, and the first of each focus. */
  private static List<Choice> places(ClassGroups groups) {
    TreeMap<GroupPlace, String> places = new TreeMap<>();
    groups.groups().forEach(group -> places.put(group.place(), name(group.place())));
    for (Focus focus : Focus.values()) {
      places.putIfAbsent(new GroupPlace(focus, 1), GroupWords.name(focus));
    }
    return places.entrySet().stream().map(entry -> new Choice(entry.getKey().id(), entry.getValue())).toList();
  }
}
