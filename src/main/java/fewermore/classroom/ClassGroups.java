package fewermore.classroom;

import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.Focus;
import fewermore.reasoning.GroupPlace;
import fewermore.reasoning.Groups;
import fewermore.reasoning.ReasoningTable;
import fewermore.reasoning.Ways;
import fewermore.story.Kind;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The groups of one day. A group is for one thing to talk about, lasts a day, and has no rank.
 *
 * @param kept whether the teacher's own hand is in it; then nothing is solved again
 */
public record ClassGroups(List<Group> groups, boolean kept) {
  /**
   * @param well a kind of problem each of them is likely to do well: the first to ask
   * @param telling the kind that then tells most about them
   */
  public record Group(GroupPlace place, List<Seat> children, Kind well, Kind telling) {
    public Group {
      children = List.copyOf(children);
    }
  }

  /**
   * A child's place.
   *
   * @param quote the first try that says most for sitting here, or null without work
   * @param makesThree whether her own work asks for another place, and she sits here to make the group three
   * @param moved why the child sits elsewhere than the day before, or null
   */
  public record Seat(ChildReasoning reasoning, PieceOfWork quote, boolean byHand, boolean makesThree, String moved) {
    public Child child() {
      return reasoning.child();
    }
  }

  public ClassGroups {
    groups = List.copyOf(groups);
  }

  /** The places proposed from what the work says. Of a child without work nothing is said: she sits on her own. */
  public static Map<Long, GroupPlace> propose(
      Collection<ChildReasoning> children, Collection<SeatedPair> pairs, ReasoningTable table) {
    Set<Long> withWork = children.stream().filter(each -> !each.counted().isEmpty()).map(each -> each.child().id())
        .collect(Collectors.toSet());
    return Groups.propose(
        children.stream().filter(each -> withWork.contains(each.child().id())).map(each -> new Groups.Member(each.child().id(), each.estimate().ways())).toList(),
        pairs.stream().filter(pair -> withWork.contains(pair.one()) && withWork.contains(pair.other())).map(pair -> new Groups.Pair(pair.one(), pair.other(), pair.together())).toList(), table).places();
  }

  /**
   * @param places where each child sits; who is missing sits on her own
   * @param byHand children the teacher moved herself
   * @param before the places of the last day before, with what the work said then; empty when there was none
   */
  public static ClassGroups of(Collection<ChildReasoning> children, Map<Long, GroupPlace> places, boolean kept,
      Collection<Long> byHand, Map<Long, GroupPlace> before, Map<Long, ChildReasoning> then, ReasoningTable table) {
    Map<GroupPlace, List<Seat>> byPlace = new TreeMap<>();
    for (ChildReasoning child : children) {
      long id = child.child().id();
      GroupPlace place = places.getOrDefault(id, GroupPlace.ON_THEIR_OWN);
      boolean hers = byHand.contains(id);
      byPlace.computeIfAbsent(place, none -> new ArrayList<>()).add(new Seat(child, quote(child, place.focus(), table),
          hers, !hers && makesThree(child, place.focus(), table), moved(place, before.get(id), child, then.get(id), hers)));
    }
    List<Group> groups = new ArrayList<>();
    byPlace.forEach((place, seats) -> {
      List<ChildReasoning> who = seats.stream().map(Seat::reasoning).toList();
      Kind well = TellsMore.doneWell(who, table);
      groups.add(new Group(place, seats, well, telling(place.focus(), TellsMore.next(who, well, table), well)));
    });
    return new ClassGroups(groups, kept);
  }

  /** Who has more is talked about where the word points the other way: elsewhere following it goes well. */
  private static Kind telling(Focus focus, Kind most, Kind well) {
    return focus != Focus.WHO_HAS_MORE || !most.agrees() ? most
        : well == Kind.LARGER_FEWER ? Kind.SMALLER_MORE : Kind.LARGER_FEWER;
  }

  private static boolean makesThree(ChildReasoning child, Focus focus, ReasoningTable table) {
    Ways ways = child.estimate().ways();
    double here = Groups.fit(ways, focus, table);
    return focus != Focus.ON_THEIR_OWN && Stream.of(Focus.values()).anyMatch(each -> Groups.fit(ways, each, table) > here);
  }

  /** The latest of the first tries that speak most for what this group talks about, against reading the story. */
  private static PieceOfWork quote(ChildReasoning child, Focus focus, ReasoningTable table) {
    Optional<WayOfReasoning> way = likeliest(child, focus, table);
    Comparator<PieceOfWork> bySupport = Comparator.comparingDouble(piece -> way.map(each ->
        ChildReasoning.evidence(piece, table).map(evidence ->
            evidence.support(each, table) / evidence.support(rival(each), table)).orElse(-1.0)).orElse(0.0));
    // Work stands latest first, and of equal ones the first is taken.
    PieceOfWork best = null;
    for (PieceOfWork piece : child.counted()) {
      if (best == null || bySupport.compare(piece, best) > 0) {
        best = piece;
      }
    }
    return best;
  }

  private static WayOfReasoning rival(WayOfReasoning way) {
    return way == WayOfReasoning.FROM_THE_STORY ? WayOfReasoning.BY_THE_CUE_WORD : WayOfReasoning.FROM_THE_STORY;
  }

  /** Of the ways this focus suits well, the likeliest for this child; none where nothing can be said yet. */
  private static Optional<WayOfReasoning> likeliest(ChildReasoning child, Focus focus, ReasoningTable table) {
    if (focus == Focus.LOOK_CLOSER) {
      return Optional.empty();
    }
    WayOfReasoning likeliest = null;
    for (WayOfReasoning way : WayOfReasoning.values()) {
      if (table.suits(way, focus) >= .75
          && (likeliest == null || child.estimate().ways().of(way) > child.estimate().ways().of(likeliest))) {
        likeliest = way;
      }
    }
    return Optional.ofNullable(likeliest);
  }

  private static String moved(GroupPlace place, GroupPlace before, ChildReasoning now, ChildReasoning then, boolean byHand) {
    if (before == null || before.focus() == place.focus()) {
      return null;
    }
    String from = "Was in “" + GroupWords.name(before.focus()) + "”. ";
    return byHand ? from + "You moved this child." : then == null ? from + GroupWords.said(now) + " now."
        : GroupWords.said(then).equals(GroupWords.said(now)) ? from + "The work says the same; the groups were shared out anew."
        : from + "Then: " + GroupWords.said(then) + "; now: " + GroupWords.said(now) + ".";
  }

  /** Places after one child was moved by hand: nobody else's changes. */
  public static Map<Long, GroupPlace> moved(Map<Long, GroupPlace> places, long child, GroupPlace to) {
    Map<Long, GroupPlace> moved = new LinkedHashMap<>(places);
    moved.put(child, to);
    return moved;
  }
}
