/* One child's work on one problem: the state the page draws from, and the form it is sent in.

   state: { bars: { longer: "" | "0" | "1", lanes: [on the first, on the second], gap }, equation, answer, label,
            estimate }. On a bar "?" is the unknown; on the wire it is "x". */

const onWire = place => (place === "?" ? "x" : place);
const onPage = place => (place === "x" ? "?" : place ?? "");

export function blank() {
  return { bars: { longer: "", lanes: ["", ""], gap: "" }, equation: "", answer: "", label: "", estimate: "" };
}

export function fromWire(parts, problem) {
  const state = blank();
  ["equation", "answer", "label", "estimate"].forEach(part => {
    state[part] = parts?.[part] ?? "";
  });
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
    parts[part] = part === "bars" ? barsToWire(state.bars, problem) : state[part].trim();
  });
  return parts;
}

function barsToWire({ longer, lanes, gap }, problem) {
  const places = longer === "1" ? [lanes[1], lanes[0]] : lanes;
  return { longer: longer === "" ? "" : problem.lanes[Number(longer)].id, longerBar: onWire(places[0]),
    shorterBar: onWire(places[1]), gap: onWire(gap) };
}

export function isEmpty(state, part) {
  if (part !== "bars") return state[part].trim() === "";
  const { longer, lanes, gap } = state.bars;
  return longer + lanes.join("") + gap === "";
}

/* Whether nothing more can be put there: bars are full when all three places are. */
export function isFull(state, part) {
  const { longer, lanes, gap } = state.bars;
  return part === "bars" ? longer !== "" && lanes.every(Boolean) && gap !== "" : !isEmpty(state, part);
}
