/* The steps of a strategy and the picture they make: the same rules as the laptop's, so that a replay there shows what
   was done here. A step that can't be done changes nothing. Knows no page. */
import { say } from "./texts.js";

export const MOST_STEPS = 64;             /* fewer than the laptop takes, so that two strategies fit one item */
const MOST_PIECES = 29, MOST_JUMPS = 24, MOST_NUMBER = 220;
export const PIECES = ["hundred", "ten", "one"];
const WORTH = { hundred: 100, ten: 10, one: 1 };

const none = () => ({ hundred: 0, ten: 0, one: 0 });
export const valueOf = pile => PIECES.reduce((sum, piece) => sum + pile[piece] * WORTH[piece], 0);
export const isNone = pile => PIECES.every(piece => pile[piece] === 0);

export function start(kind) {
  return {
    pieces: { first: none(), second: none(), out: none(), traded: none(), joined: false, written: null },
    line: { start: null, jumps: [], written: null },
    expanded: { first: { number: null, parts: [] }, second: { number: null, parts: [] }, tens: null, ones: null,
      result: [], written: null }
  }[kind];
}

const MAKE = {
  pieces: {
    put(mat, { pile, piece, count }) {
      const to = pile === 2 ? mat.second : mat.first;
      if (count < 1 || (pile === 2 && mat.joined) || to[piece] + count > MOST_PIECES) return false;
      to[piece] += count;
      return true;
    },
    "put-back"(mat, { pile, piece, count }) {
      const from = pile === 2 ? mat.second : mat.first;
      if (count < 1 || from[piece] < count) return false;
      from[piece] -= count;
      return true;
    },
    trade(mat, { give, get }) {
      const down = WORTH[give] === 10 * WORTH[get], up = WORTH[get] === 10 * WORTH[give];
      const gives = down ? 1 : 10, gets = down ? 10 : 1;
      if ((!down && !up) || mat.first[give] < gives || mat.first[get] + gets > MOST_PIECES) return false;
      mat.first[give] -= gives;
      mat.first[get] += gets;
      if (down) mat.traded[give] += 1;
      return true;
    },
    "cross-out"(mat, { piece, count }) {
      if (count < 1 || mat.first[piece] < count) return false;
      mat.first[piece] -= count;
      mat.out[piece] += count;
      return true;
    },
    join(mat) {
      if (mat.joined || isNone(mat.second)) return false;
      PIECES.forEach(piece => { mat.first[piece] += mat.second[piece]; });
      mat.second = none();
      mat.joined = true;
      return true;
    },
    write(mat, { number }) { mat.written = number; return true; }
  },
  line: {
    start(line, { at }) {
      if (line.jumps.length > 0 || at < 0 || at > MOST_NUMBER) return false;
      line.start = at;
      return true;
    },
    jump(line, { by, to }) {
      if (line.start === null || by === 0 || to < 0 || to > MOST_NUMBER || line.jumps.length >= MOST_JUMPS) return false;
      line.jumps.push({ by, to });
      return true;
    },
    write(line, { number }) { line.written = number; return true; }
  },
  expanded: {
    break(paper, { row, number, tens, ones }) {
      if (row === "result" || paper[row].parts.length > 0) return false;
      paper[row] = { number, parts: [{ tens, ones }] };
      return true;
    },
    regroup(paper, { row, tens, ones }) {
      if (row === "result") {
        if (paper.tens === null || paper.ones === null) return false;
        paper.result.push({ tens, ones });
        return true;
      }
      if (paper[row].parts.length === 0) return false;
      paper[row].parts.push({ tens, ones });
      return true;
    },
    combine(paper, { place, to }) {
      if (paper.result.length > 0) return false;
      paper[place] = to;
      return true;
    },
    write(paper, { number }) { paper.written = number; return true; }
  }
};

/* What all steps make, one after the other. */
export function fold(kind, steps) {
  const state = start(kind);
  steps.forEach(step => MAKE[kind][step.do]?.(state, step));
  return state;
}

/* Whether a step can be done now. */
export function can(kind, steps, step) {
  return steps.length < MOST_STEPS && Boolean(MAKE[kind][step.do]?.(fold(kind, steps), step));
}

/* ---- the picture in words ---- */

const word = key => say(`step.${key}`);
const tell = (key, ...values) => say(`step.${key}`, ...values);

export function pileWords(pile) {
  return ["one", "ten", "hundred"].filter(piece => pile[piece] > 0).reduce((text, piece) => {
    const some = `${pile[piece]} ${word(`${piece}.${pile[piece] === 1 ? "one" : "many"}`)}`;
    return text === "" ? some : some + word(text.includes(word("and")) ? "comma" : "and") + text;
  }, "") || word("none");
}

const SAYS = {
  pieces(mat) {
    const says = isNone(mat.second)
      ? [isNone(mat.first) && isNone(mat.out) ? word("mat.empty") : tell("mat.there", pileWords(mat.first))]
      : [tell("mat.piles", pileWords(mat.first), pileWords(mat.second))];
    if (!isNone(mat.out)) says.push(tell("mat.out", pileWords(mat.out)));
    return says;
  },
  line(line) {
    return [line.start === null ? word("line.empty") : tell("line.start", line.start)].concat(line.jumps.map(jump =>
      tell(jump.by > 0 ? "line.forward" : "line.back", Math.abs(jump.by), jump.to)));
  },
  expanded(paper) {
    const says = [];
    ["first", "second"].forEach(row => paper[row].parts.forEach((parts, at) =>
      says.push(tell(at === 0 ? "expanded.row" : "expanded.regrouped", paper[row].number, parts.tens, parts.ones))));
    if (paper.tens !== null) says.push(tell("expanded.tens", paper.tens));
    if (paper.ones !== null) says.push(tell("expanded.ones", paper.ones));
    paper.result.forEach(parts => says.push(tell("expanded.result", parts.tens, parts.ones)));
    return says;
  }
};

export function describe(kind, state) {
  const says = SAYS[kind](state);
  if (state.written !== null) says.push(tell("written", state.written));
  return says.length > 0 ? says.join(" ") : word("expanded.empty");
}
