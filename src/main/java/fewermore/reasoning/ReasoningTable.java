package fewermore.reasoning;

import fewermore.prediction.Plan;
import fewermore.prediction.WayOfReasoning;
import fewermore.story.Kind;
import fewermore.story.Operation;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Every number the estimate uses, each with its source or "ours": the one table, read from a text file a person can
 * read and change ({@code reasoning/table.tsv} says how). None of it is fitted on a class: item parameters are poorly
 * recovered from so few children (Oka &amp; Okada 2021, arXiv 2104.10975, abstract).
 */
public final class ReasoningTable {
  private static final int WAYS = WayOfReasoning.values().length;
  private static final int PLANS = Plan.values().length;
  private static final String FILE = "/reasoning/table.tsv";
  private static final String OPPOSITE = "opposite";
  private static final double ROUNDING = 1e-9;

  /**
   * One number.
   *
   * @param source who published it, or that it is ours
   */
  public record Constant(String name, double value, String source) {}

  private static final class Standard {
    static final ReasoningTable TABLE = standardTable();
  }

  private final Map<String, Constant> constants;
  private final double[] shares = new double[WAYS];
  private final double[][][] chances = new double[Kind.values().length][WAYS][PLANS];
  private final double[][] suits = new double[WAYS][Focus.values().length];
  private final double drawnAfresh;
  private final double floor;

  private ReasoningTable(Map<String, Constant> constants) {
    this.constants = constants;
    for (WayOfReasoning way : WayOfReasoning.values()) {
      shares[way.ordinal()] = share("share/" + way.id());
      for (Kind kind : Kind.values()) {
        chances[kind.ordinal()][way.ordinal()] = row(way, kind);
      }
      for (Focus focus : Focus.values()) {
        suits[way.ordinal()][focus.ordinal()] = share("suits/" + way.id() + "/" + focus.id());
      }
    }
    double all = Arrays.stream(shares).sum();
    if (Math.abs(all - 1) > ROUNDING) {
      throw new Unusable("share/…: the starting shares were expected to sum to 1, found " + all + "; change one of them");
    }
    drawnAfresh = share("between-days/drawn-afresh");
    floor = share("work/floor");
  }

  /** A table that can't be used: the message says where, what was expected, one thing to try. */
  public static final class Unusable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Unusable(String message) {
      super(message);
    }
  }

  /** The table the program comes with. */
  public static ReasoningTable standard() {
    return Standard.TABLE;
  }

  private static ReasoningTable standardTable() {
    try (InputStream in = ReasoningTable.class.getResourceAsStream(FILE);
        Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8)) {
      return read(reader);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Reads a table. Every constant must be there, once; others are kept and not used.
   *
   * @throws Unusable naming the line or the constant
   */
  public static ReasoningTable read(Reader reader) throws IOException {
    Map<String, Constant> constants = new LinkedHashMap<>();
    BufferedReader lines = new BufferedReader(reader);
    int number = 0;
    for (String line = lines.readLine(); line != null; line = lines.readLine()) {
      number++;
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      String[] cells = line.split("\t");
      if (cells.length != 3) {
        throw new Unusable("line " + number + ": a name, a value and a source with tabs between were expected; add what is missing");
      }
      Constant constant = new Constant(cells[0].strip(), value(cells[1].strip(), number), cells[2].strip());
      if (constants.put(constant.name(), constant) != null) {
        throw new Unusable("line " + number + ": " + constant.name() + " was expected once; take one of the two lines out");
      }
    }
    return new ReasoningTable(constants);
  }

  private static double value(String written, int line) {
    try {
      double value = Double.parseDouble(written);
      if (value >= 0 && value <= 1_000) {
        return value;
      }
    } catch (NumberFormatException e) {
      // Said below, as for a number out of range.
    }
    throw new Unusable("line " + line + ": a number from 0 up was expected, found \"" + written + "\"; write it like 0.25");
  }

  /** The number of that name. */
  public double value(String name) {
    Constant constant = constants.get(name);
    if (constant == null) {
      throw new Unusable(name + ": expected in the table, and not there; add its line");
    }
    return constant.value();
  }

  private double share(String name) {
    double value = value(name);
    if (value > 1) {
      throw new Unusable(name + ": from 0 to 1 was expected, found " + value + "; write it like 0.25");
    }
    return value;
  }

  int whole(String name) {
    return (int) value(name);
  }

  /** All of it, in the order of the file. */
  public List<Constant> constants() {
    return List.copyOf(constants.values());
  }

  /** How many children reason so before any work was seen. */
  public double share(WayOfReasoning way) {
    return shares[way.ordinal()];
  }

  /** How likely a child of that way takes that plan on a problem of that kind; over the plans they sum to 1. */
  public double chance(WayOfReasoning way, Kind kind, Plan plan) {
    return chances[kind.ordinal()][way.ordinal()][plan.ordinal()];
  }

  /** How well talking about that suits a child of that way, from 0 to 1. */
  public double suits(WayOfReasoning way, Focus focus) {
    return suits[way.ordinal()][focus.ordinal()];
  }

  /** The chance that a way is drawn afresh from the starting shares between two days with work. */
  public double drawnAfresh() {
    return drawnAfresh;
  }

  double floor() {
    return floor;
  }

  double[] row(Kind kind, int way) {
    return chances[kind.ordinal()][way];
  }

  /** Whether some plan's chance on this kind differs enough between the two ways that work on it could tell them apart. */
  public boolean couldTell(Kind kind, WayOfReasoning one, WayOfReasoning other) {
    double[] row = row(kind, one.ordinal());
    double[] otherRow = row(kind, other.ordinal());
    double most = 0;
    for (int plan = 0; plan < PLANS; plan++) {
      most = Math.max(most, Math.abs(row[plan] - otherRow[plan]));
    }
    return most >= value("say/could-tell") - ROUNDING;
  }

  // Rows

  private double[] row(WayOfReasoning way, Kind kind) {
    if (way == WayOfReasoning.BY_THE_CUE_WORD && kind.agrees()) {
      return row(WayOfReasoning.FROM_THE_STORY, kind);
    }
    for (String problems : narrowestFirst(kind)) {
      Map<Plan, Double> named = named("chance/" + way.id() + "/" + problems + "/", kind);
      if (!named.isEmpty()) {
        return filled(named, way.id() + " on " + kind.id());
      }
    }
    throw new Unusable("chance/" + way.id() + ": a row for " + kind.id() + " was expected; add one for any");
  }

  private static List<String> narrowestFirst(Kind kind) {
    List<String> problems = new ArrayList<>(List.of(kind.id(), kind.unknown().id(),
        kind.agrees() ? "agreeing" : "disagreeing"));
    if (kind.operation() == Operation.SUBTRACT) {
      problems.add("subtraction");
    }
    problems.add("any");
    return problems;
  }

  private Map<Plan, Double> named(String prefix, Kind kind) {
    Map<Plan, Double> named = new LinkedHashMap<>();
    for (Plan plan : Plan.values()) {
      if (constants.containsKey(prefix + plan.id())) {
        named.put(plan, share(prefix + plan.id()));
      }
    }
    if (constants.containsKey(prefix + OPPOSITE)) {
      named.put(opposite(kind), share(prefix + OPPOSITE));
    }
    return named;
  }

  private static Plan opposite(Kind kind) {
    return kind.operation() == Operation.ADD ? Plan.TAKES_AWAY_LARGER_FIRST : Plan.ADDS;
  }

  private static double[] filled(Map<Plan, Double> named, String whose) {
    double left = 1 - named.values().stream().mapToDouble(Double::doubleValue).sum();
    if (left < -ROUNDING || named.size() == PLANS && left > ROUNDING) {
      throw new Unusable("chances of " + whose + ": they were expected to sum to 1; change one of them");
    }
    double[] row = new double[PLANS];
    Arrays.fill(row, named.size() == PLANS ? 0 : Math.max(0, left) / (PLANS - named.size()));
    named.forEach((plan, chance) -> row[plan.ordinal()] = chance);
    return row;
  }
}
