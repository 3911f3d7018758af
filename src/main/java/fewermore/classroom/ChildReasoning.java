package fewermore.classroom;

import fewermore.prediction.WayOfReasoning;
import fewermore.reasoning.Estimate;
import fewermore.reasoning.Evidence;
import fewermore.reasoning.ReasoningTable;
import fewermore.reasoning.Statement;
import fewermore.reasoning.Ways;
import fewermore.story.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One child's work and what it says of her way of reasoning: first hand-ins only, without what the teacher took out.
 *
 * @param work what is read, the latest first; with what was taken out
 * @param counted what counts, the latest first
 * @param estimate from what counts
 * @param putAside ways the teacher put aside, the latest first
 * @param takenOut work the teacher took out, of this child or the whole class
 */
public record ChildReasoning(
    Child child, List<PieceOfWork> work, List<PieceOfWork> counted, Estimate estimate, List<PutAside> putAside,
    List<TakenOut> takenOut) {
  private static final Comparator<PieceOfWork> LATEST_FIRST =
      Comparator.comparing((PieceOfWork piece) -> piece.evidence().at()).reversed()
          .thenComparing(piece -> piece.problem().id());

  public ChildReasoning {
    work = List.copyOf(work);
    counted = List.copyOf(counted);
    putAside = List.copyOf(putAside);
    takenOut = List.copyOf(takenOut);
  }

  public static ChildReasoning of(Child child, Collection<PieceOfWork> all, TeacherWord word, ReasoningTable table) {
    List<PieceOfWork> work = all.stream().sorted(LATEST_FIRST).toList();
    List<PieceOfWork> counted = work.stream().filter(piece -> word.takenOut(piece).isEmpty()).toList();
    List<Evidence> evidence = new ArrayList<>();
    for (int at = counted.size() - 1; at >= 0; at--) {
      evidence(counted.get(at), table).ifPresent(evidence::add);
    }
    return new ChildReasoning(child, work, counted, Estimate.of(evidence, table), word.putAside(child),
        word.takenOut().stream().filter(each -> each.child() == 0 || each.child() == child.id()).toList());
  }

  /** What the first hand-in says; empty when it says nothing. */
  public static Optional<Evidence> evidence(PieceOfWork piece, ReasoningTable table) {
    HandIn first = piece.evidence();
    return Evidence.of(first.day(), piece.problem().story(), first.parts(), first.marks(), table);
  }

  /** Every child of a class, by name, from the work up to that day and not older than {@code days}. */
  static List<ChildReasoning> ofClass(
      Collection<Child> classList, Collection<PieceOfWork> work, LocalDate asOf, int days, TeacherWord word,
      ReasoningTable table, KeptReasonings kept) {
    Map<Child, List<PieceOfWork>> byChild = new LinkedHashMap<>();
    classList.stream().sorted(Comparator.comparing(Child::name).thenComparing(Child::id))
        .forEach(child -> byChild.put(child, new ArrayList<>()));
    for (PieceOfWork piece : work) {
      LocalDate day = piece.evidence().day();
      List<PieceOfWork> of = byChild.get(piece.child());
      if (of != null && !day.isAfter(asOf) && day.isAfter(asOf.minusDays(days))) {
        of.add(piece);
      }
    }
    List<ChildReasoning> children = new ArrayList<>();
    byChild.forEach((child, pieces) -> children.add(kept.of(child, pieces, word, table)));
    kept.keepOnly(byChild.keySet());
    return children;
  }

  /** Why this piece does not count, or empty when it does. */
  public Optional<TakenOut> takenOut(PieceOfWork piece) {
    return new TeacherWord(takenOut, List.of()).takenOut(piece);
  }

  public Statement says() {
    return estimate.says();
  }

  /** Whether what would be said is a way the teacher put aside; then her word stands beside it, and nothing is said. */
  public Optional<PutAside> setAside() {
    Statement says = says();
    return putAside.stream().filter(each -> each.way() == says.way()).findFirst();
  }

  /**
   * Since when the work shows what is said: the first of the latest days on which, in the light of all work, this way
   * was the likeliest. Empty when nothing is said, or when it shows since the first day.
   */
  public Optional<LocalDate> since() {
    if (!says().says()) {
      return Optional.empty();
    }
    List<Ways> smoothed = estimate.smoothed();
    int at = smoothed.size();
    while (at > 0 && smoothed.get(at - 1).top() == says().way()) {
      at--;
    }
    return at == 0 || at == smoothed.size() ? Optional.empty() : Optional.of(estimate.days().get(at).day());
  }

  /** Of these pieces of her work those that are not from before {@link #since}. */
  List<Quote> showing(List<Quote> quotes) {
    return since().map(day -> quotes.stream().filter(quote -> !quote.day().isBefore(day)).toList()).orElse(quotes);
  }

  /** Whether work on that kind could tell the likeliest way of this child from the next. */
  public boolean couldTell(Kind kind) {
    return estimate.table().couldTell(kind, likeliest(), nextLikeliest());
  }

  public WayOfReasoning likeliest() {
    return estimate.ways().top();
  }

  public WayOfReasoning nextLikeliest() {
    return estimate.ways().next();
  }

  /** Whether all work is on problems whose word agrees: then nothing is said of the story or the word. */
  public boolean onlyAgreeing() {
    return counted.stream().allMatch(piece -> piece.problem().kind().agrees());
  }

  /** The kind of the last problem worked on, or null. */
  public Kind lastKind() {
    return work.isEmpty() ? null : work.get(0).problem().kind();
  }
}
