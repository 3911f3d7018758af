/* One child's work on one problem: the state the page draws from, and the form it is sent in.

   state: { bars: { longer: "" | "0" | "1", lanes: [on the first, on the second], gap }, equation, answer, label,
            estimate, reading: { question: a sentence, known: numbers },
            strategy: { kind, steps, check: null | { kind, steps } } }. On a bar "?" is the unknown; on the wire it is "x". */

const onWire = place => (place === "?" ? "x" : place);
const onPage = place => (place === "x" ? "?" : place ?? "");

export function blank() {
  return { bars: { longer: "", lanes: ["", ""], gap: "" }, equation: "", answer: "", label: "", estimate: "",
    reading: { question: "", known: [] },
    strategy: { kind: "", steps: [], check: null } };
}

export function fromWire(parts, problem) {
  const state = blank();
  ["equation", "answer", "label", "estimate"].forEach(part => {
    state[part] = parts?.[part] ?? "";
  });
  state.reading = { question: parts?.reading?.question ?? "", known: parts?.reading?.known ?? [] };
  if (parts?.strategy) {
    const { kind, steps, check } = parts.strategy;
    state.strategy = { kind, steps, check: check ?? null };
  }
  const bars = parts?.bars;
  if (bars) {
    const longer = problem.lanes.findIndex(lane => lane.id === bars.longer);
    const places = [onPage(bars.longerBar), onPage(bars.shorterBar)];
    state.bars = { longer: longer < 0 ? "" : String(longer), lanes: longer === 1 ? places.reverse() : places,
      gap: onPage(bars.gap) };
  }
  return state;
}

export function toWire(state, problem) {
  const parts = {};
  problem.asked.forEach(part => {
    if (part === "bars") parts.bars = barsToWire(state.bars, problem);
    else if (part === "reading") parts.reading = state.reading;
    else if (part === "strategy") parts.strategy = strategyToWire(state.strategy);
    else parts[part] = state[part].trim();
  });
  return parts;
}

/* A strategy of which all was taken back is none. */
function strategyToWire({ kind, steps, check }) {
  const whole = { kind: steps.length > 0 ? kind : "", steps };
  return check && check.steps.length > 0 && steps.length > 0 ? { ...whole, check } : whole;
}

function barsToWire({ longer, lanes, gap }, problem) {
  const places = longer === "1" ? [lanes[1], lanes[0]] : lanes;
  return { longer: longer === "" ? "" : problem.lanes[Number(longer)].id, longerBar: onWire(places[0]),
    shorterBar: onWire(places[1]), gap: onWire(gap) };
}

/* The parts that are work. The reading is none: it is never asked for again and never holds a hand-in up. */
export const worked = problem => problem.asked.filter(part => part !== "reading");

export function isEmpty(state, part) {
  if (part === "reading") return state.reading.question === "" && state.reading.known.length === 0;
  if (part === "strategy") return state.strategy.steps.length === 0;
  if (part !== "bars") return state[part].trim() === "";
  const { longer, lanes, gap } = state.bars;
  return longer + lanes.join("") + gap === "";
}

/* Whether nothing more can be put there: bars are full when all three places are, the reading with the question and
   two numbers, which every comparison gives. */
export function isFull(state, part) {
  if (part === "reading") return state.reading.question !== "" && state.reading.known.length >= 2;
  const { longer, lanes, gap } = state.bars;
  return part === "bars" ? longer !== "" && lanes.every(Boolean) && gap !== "" : !isEmpty(state, part);
}
