package fewermore.classroom;

import fewermore.marking.Bars;
import fewermore.marking.Work;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * Prints findings drawn at random, each beside all the work it was read from, to read through: {@code
 * FindingsReadThrough [how many] [seed]}. Half of them as of a day in the middle of the three weeks. How each child was
 * made to reason stands at the end of all, so that one can judge from the work first.
 */
public final class FindingsReadThrough {
  private static final ZoneId ZONE = ZoneId.of("America/Chicago");
  private static final LocalDate TODAY = LocalDate.of(2026, 11, 13);
  private static final int CLASSES = 5;

  private FindingsReadThrough() {}

  private record Drawn(Finding finding, ChildFinding said, InventedChild made, LocalDate asOf) {}

  public static void main(String[] args) {
    int count = args.length > 0 ? Integer.parseInt(args[0]) : 30;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    List<Drawn> all = new ArrayList<>();
    Random random = new Random(seed);
    for (int each = 0; each < CLASSES; each++) {
      InventedClass invented = InventedClass.of(InventedClass.USUAL,
          TODAY.atTime(16, 0).atZone(ZONE).toInstant(), ZONE, seed * CLASSES + each);
      InventedPieces pieces = InventedPieces.of(invented);
      for (LocalDate asOf : List.of(TODAY, invented.days().get(1 + random.nextInt(InventedClass.DAYS_BEFORE - 1)).date())) {
        for (Finding finding : Findings.of(pieces.children, pieces.pieces, asOf).statements()) {
          finding.children().forEach(said ->
              all.add(new Drawn(finding, said, invented.children().get((int) said.child().id() - 1), asOf)));
        }
      }
    }
    Collections.shuffle(all, random);
    List<Drawn> drawn = all.subList(0, Math.min(count, all.size()));
    for (int at = 0; at < drawn.size(); at++) {
      print(at + 1, drawn.get(at));
    }
    System.out.println("How each was made to reason, day by day:");
    for (int at = 0; at < drawn.size(); at++) {
      System.out.println((at + 1) + " " + drawn.get(at).said().child().name() + ": "
          + runs(drawn.get(at).made().ways().stream().map(Enum::name).toList()));
    }
  }

  private static void print(int number, Drawn drawn) {
    System.out.printf("%d. as of %s: %s%n", number, drawn.asOf(), FindingWords.headline(drawn.finding()));
    System.out.printf("   %s [%s] also %s%n", FindingWords.ofChild(drawn.said()), drawn.said().strength(), drawn.said().also());
    List<Quote> quotes = new ArrayList<>(drawn.said().evidence());
    quotes.addAll(drawn.said().apart());
    for (Quote quote : quotes) {
      Work work = quote.work().evidence().parts();
      boolean tells = drawn.said().reasoning().couldTell(quote.problem().kind());
      System.out.printf("   %s %s %-16s %-7s %-18s answer %-4s %s %s | %s%n", quote.day(), tells ? "tells" : "     ",
          quote.problem().kind().id(), quote.says(), work.equation(), work.answer(), work.label(), bars(work.bars()), quote.problem().text());
    }
  }

  private static String bars(Bars bars) {
    return bars == null || bars.blank() ? "" : "bars " + bars.longer() + " " + bars.longerBar() + " | " + bars.shorterBar() + " | " + bars.gap();
  }

  private static String runs(List<String> days) {
    StringBuilder text = new StringBuilder();
    for (int from = 0, to; from < days.size(); from = to) {
      to = from + 1;
      while (to < days.size() && days.get(to).equals(days.get(from))) {
        to++;
      }
      text.append(to - from).append(" × ").append(days.get(from)).append(' ');
    }
    return text.toString().strip();
  }
}
