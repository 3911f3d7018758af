package fewermore.calculation;

/**
 * One step of a strategy: all there are. A step may be wrong; what it does to a {@link State} says so.
 *
 * <p>Base-ten pieces take {@link Put}, {@link PutBack}, {@link Trade}, {@link CrossOut}, {@link Join}; the open
 * number line {@link Start} and {@link Jump}; expanded form {@link Break}, {@link Regroup}, {@link Combine}. Each
 * ends with {@link Write}.
 */
public sealed interface Step {
  /** The largest number a step may hold. */
  int LARGEST = 999;

  <R> R tell(Cases<R> cases);

  /** Lays {@code count} pieces on pile 1 or 2. */
  record Put(int pile, Piece piece, int count) implements Step {
    @Override public <R> R tell(Cases<R> cases) {
      return cases.put(this);
    }
  }

  /** Lifts pieces off the mat, back into the box: they are no longer part of the number. */
  record PutBack(int pile, Piece piece, int count) implements Step {
    @Override public <R> R tell(Cases<R> cases) {
      return cases.putBack(this);
    }
  }

  /** Trades on pile 1: one piece for ten of the next smaller, or ten for one of the next larger. */
  record Trade(Piece give, Piece get) implements Step {
    /** Whether the two lie side by side in worth. */
    public boolean possible() {
      return Math.abs(give.ordinal() - get.ordinal()) == 1;
    }

    /** How many are given: one or ten. */
    public int gives() {
      return give.worth() > get.worth() ? 1 : 10;
    }

    public int gets() {
      return 11 - gives();
    }

    @Override public <R> R tell(Cases<R> cases) {
      return cases.trade(this);
    }
  }

  /** Crosses pieces of pile 1 out: taken away, still to be seen. */
  record CrossOut(Piece piece, int count) implements Step {
    @Override public <R> R tell(Cases<R> cases) {
      return cases.crossOut(this);
    }
  }

  /** Moves pile 2 to pile 1. */
  record Join() implements Step {
    @Override public <R> R tell(Cases<R> cases) {
      return cases.join(this);
    }
  }

  /** Marks where the jumps begin. */
  record Start(int at) implements Step {
    @Override public <R> R tell(Cases<R> cases) {
      return cases.start(this);
    }
  }

  /** A jump with the size written over it, back below 0, and the number written where it lands. */
  record Jump(int by, int to) implements Step {
    @Override public <R> R tell(Cases<R> cases) {
      return cases.jump(this);
    }
  }

  /** A row of expanded form. */
  enum Row {
    FIRST("first"),
    SECOND("second"),
    RESULT("result");

    private final String id;

    Row(String id) {
      this.id = id;
    }

    public String id() {
      return id;
    }
  }

  /** A place of the result row. */
  enum Place {
    TENS("tens"),
    ONES("ones");

    private final String id;

    Place(String id) {
      this.id = id;
    }

    public String id() {
      return id;
    }
  }

  /** Writes a number as two parts: {@code 52 = 50 + 2}. Not for the result row. */
  record Break(Row row, int number, int tens, int ones) implements Step {
    @Override public <R> R tell(Cases<R> cases) {
      return cases.breakUp(this);
    }
  }

  /** Strikes the parts of a row and writes others under them: {@code 50 + 2} becomes {@code 40 + 12}. */
  record Regroup(Row row, int tens, int ones) implements Step {
    @Override public <R> R tell(Cases<R> cases) {
      return cases.regroup(this);
    }
  }

  /** Writes what the parts of one place come to. */
  record Combine(Place place, int to) implements Step {
    @Override public <R> R tell(Cases<R> cases) {
      return cases.combine(this);
    }
  }

  /** Writes the number it all comes to. */
  record Write(int number) implements Step {
    @Override public <R> R tell(Cases<R> cases) {
      return cases.write(this);
    }
  }

  /** A case for each step: a new step does not compile until each of these knows it. */
  interface Cases<R> {
    R put(Put step);

    R putBack(PutBack step);

    R trade(Trade step);

    R crossOut(CrossOut step);

    R join(Join step);

    R start(Start step);

    R jump(Jump step);

    R breakUp(Break step);

    R regroup(Regroup step);

    R combine(Combine step);

    R write(Write step);
  }

  /** The cases of pieces; every step of another strategy is one case. */
  interface OfPieces<R> extends Cases<R> {
    /** What a step of another strategy comes to. */
    R elsewhere();

    @Override
    default R start(Start step) {
      return elsewhere();
    }

    @Override
    default R jump(Jump step) {
      return elsewhere();
    }

    @Override
    default R breakUp(Break step) {
      return elsewhere();
    }

    @Override
    default R regroup(Regroup step) {
      return elsewhere();
    }

    @Override
    default R combine(Combine step) {
      return elsewhere();
    }
  }

  /** The cases of the number line; every step of another strategy is one case. */
  interface OfLine<R> extends Cases<R> {
    /** What a step of another strategy comes to. */
    R elsewhere();

    @Override
    default R put(Put step) {
      return elsewhere();
    }

    @Override
    default R putBack(PutBack step) {
      return elsewhere();
    }

    @Override
    default R trade(Trade step) {
      return elsewhere();
    }

    @Override
    default R crossOut(CrossOut step) {
      return elsewhere();
    }

    @Override
    default R join(Join step) {
      return elsewhere();
    }

    @Override
    default R breakUp(Break step) {
      return elsewhere();
    }

    @Override
    default R regroup(Regroup step) {
      return elsewhere();
    }

    @Override
    default R combine(Combine step) {
      return elsewhere();
    }
  }

  /** The cases of expanded form; every step of another strategy is one case. */
  interface OfExpanded<R> extends Cases<R> {
    /** What a step of another strategy comes to. */
    R elsewhere();

    @Override
    default R put(Put step) {
      return elsewhere();
    }

    @Override
    default R putBack(PutBack step) {
      return elsewhere();
    }

    @Override
    default R trade(Trade step) {
      return elsewhere();
    }

    @Override
    default R crossOut(CrossOut step) {
      return elsewhere();
    }

    @Override
    default R join(Join step) {
      return elsewhere();
    }

    @Override
    default R start(Start step) {
      return elsewhere();
    }

    @Override
    default R jump(Jump step) {
      return elsewhere();
    }
  }
}
