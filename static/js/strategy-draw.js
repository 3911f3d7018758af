/* Pictures of strategies as SVG. Numbers only go in: no text of a child's. One ten is 10 units wide and 100 high. */
const TALL = 100, MOST_TENS = 29;

/* The name space of SVG, taken from an SVG of the page. */
const svgSpace = () => document.querySelector("svg").namespaceURI;

function tag(name, attributes, ...inner) {
  const node = document.createElementNS(svgSpace(), name);
  Object.entries(attributes).forEach(([key, value]) => node.setAttribute(key, value));
  node.append(...inner);
  return node;
}

const rect = (x, y, width, height, kind) => tag("rect", { x, y, width, height, class: kind });

const lines = (x, y, tall) => tag("path", { class: "cut", d: Array.from({ length: 9 }, (ignored, at) =>
  `M${x} ${y + (at + 1) * tall / 10}h10`).join("") });

/* The hatching of what is taken away: one slant a one. */
const slants = (x, y, tall) => tag("path", { class: "strike", d: Array.from({ length: tall / 10 }, (ignored, at) =>
  `M${x} ${y + 10 * at + 10}l10 -10`).join("") });

const PIECE = {
  hundred: (x, y, kind) => tag("g", { class: kind }, rect(x, y, 100, 100, "body"), tag("path", { class: "cut",
    d: Array.from({ length: 9 }, (ignored, at) => `M${x + 10 * (at + 1)} ${y}v100M${x} ${y + 10 * (at + 1)}h100`)
      .join("") }), tag("path", { class: "strike", d: Array.from({ length: 10 }, (ignored, at) =>
    `M${x} ${y + 10 * at + 10}L${x + 10 * at + 10} ${y}`).join("") })),
  ten: (x, y, kind) => tag("g", { class: kind }, rect(x, y, 10, TALL, "body"), lines(x, y, TALL), slants(x, y, TALL)),
  one: (x, y, kind) => tag("g", { class: kind }, tag("circle", { class: "body", cx: x + 5, cy: y + 5, r: 5 }),
    tag("path", { class: "strike", d: `M${x + 1} ${y + 9}l8 -8` }))
};

/* Where the piece with this number lies. */
const PLACE = {
  hundred: at => [at * 108, 0],
  ten: at => [at * 15 + Math.floor(at / 5) * 5, 0],
  one: at => [(at % 5) * 16, Math.floor(at / 5) * 16]
};

export const WIDTH = {
  hundred: count => Math.max(1, count) * 108,
  ten: count => Math.max(5, Math.min(MOST_TENS, count)) * 15 + Math.floor(Math.max(0, count - 1) / 5) * 5,
  one: () => 5 * 16
};

/* Crossed out pieces come after those that are left, places of traded ones last; the picked one is the last left. */
export function drawColumn(svg, piece, { keep, out, ghosts, picked, second }) {
  const kinds = [...Array(keep).fill(second ? "keep two" : "keep"), ...Array(out).fill("away"),
    ...Array(ghosts).fill("traded")];
  if (picked && keep > 0) kinds[keep - 1] += " picked";
  svg.setAttribute("viewBox", `-4 -4 ${WIDTH[piece](kinds.length) + 4} 108`);
  svg.replaceChildren(...kinds.map((kind, at) => PIECE[piece](...PLACE[piece](at), kind)));
}

/* The open number line: as wide apart as the numbers are, but never so near that two can't be read. */
export function placesOnLine(numbers, width) {
  const near = 54, edge = 44;
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  if (sorted.length === 1) return new Map([[sorted[0], width / 2]]);
  const least = sorted[0], most = sorted[sorted.length - 1];
  const room = width - 2 * edge - near * (sorted.length - 1);
  const places = new Map();
  sorted.forEach((number, at) => places.set(number,
    edge + near * at + Math.max(0, room) * (number - least) / (most - least)));
  const last = places.get(most);
  if (last > width - edge) sorted.forEach(number => places.set(number, edge + (places.get(number) - edge)
    * (width - 2 * edge) / (last - edge)));
  return places;
}

export function drawLine(svg, line) {
  const width = 640, base = 150;
  svg.setAttribute("viewBox", `0 0 ${width} 208`);
  if (line.start === null) {
    svg.replaceChildren(tag("path", { class: "axis", d: `M8 ${base}H${width - 8}` }));
    return;
  }
  const stops = [line.start, ...line.jumps.map(jump => jump.to)];
  const places = placesOnLine(stops, width);
  const span = line.jumps.length === 0 ? null : [Math.min(...stops), Math.max(...stops)].map(each => places.get(each));
  const inner = span ? [rect(span[0], base, span[1] - span[0], 16, "jumped")] : [];
  inner.push(tag("path", { class: "axis", d: `M8 ${base}H${width - 8}` }));
  let from = line.start;
  line.jumps.forEach((jump, at) => {
    const a = places.get(from), b = places.get(jump.to), high = Math.min(112, 44 + Math.abs(b - a) * 0.3);
    const middle = (a + b) / 2, top = base - high * 0.75, head = b > a ? -1 : 1;
    inner.push(tag("path", { class: "jump",
      d: `M${a} ${base}C${a} ${base - high} ${b} ${base - high} ${b} ${base}` }));
    inner.push(tag("path", { class: "tip", d: `M${b + head * 9} ${base - 12}L${b} ${base - 2}L${b - head * 3} ${base - 15}` }));
    inner.push(tag("text", { class: "size", x: middle, y: top - 8, "text-anchor": "middle" },
      `${jump.by > 0 ? "+" : "−"} ${Math.abs(jump.by)}`));
    from = jump.to;
  });
  [...places].forEach(([number, x]) => {
    inner.push(tag("path", { class: "axis", d: `M${x} ${base - 8}v32` }));
    if (number % 10 === 0) inner.push(rect(x - 25, base + 25, 50, 32, "friendly"));
    inner.push(tag("text", { class: "stop", x, y: base + 50, "text-anchor": "middle" }, String(number)));
  });
  svg.replaceChildren(...inner);
}
