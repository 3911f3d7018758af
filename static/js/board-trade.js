/* A trade, seen: what is new comes from where what was given lies. Once, in under 200 ms; not at all where the system asks
   for no motion. Without it the picture is the same. Places are those of the drawing: every picture of a way has one. */
const LONG = 180;

function place(part) {
  const body = part.querySelector(".body"), at = name => Number(body.getAttribute(name));
  return body.localName === "circle" ? { x: at("cx"), y: at("cy"), wide: 0, high: 0 }
    : { x: at("x") + at("width") / 2, y: at("y") + at("height") / 2, wide: at("width"), high: at("height") };
}

const mean = (places, of) => places.reduce((sum, each) => sum + each[of], 0) / places.length;

export function trade(board) {
  const shown = board.querySelector("[data-trade]:not(.out)");
  if (!shown || !shown.animate || matchMedia("(prefers-reduced-motion: reduce)").matches) return;
  const [give, get] = shown.dataset.trade.split("-");
  const opens = shown.dataset.opens === "yes";
  const given = opens ? [...shown.querySelectorAll(`.traded.${give}`)].slice(-1)
    : [...shown.previousElementSibling.querySelectorAll(`.keep.${give}:not(.two)`)].slice(-10);
  const got = [...shown.querySelectorAll(`.keep.${get}:not(.two)`)].slice(opens ? -10 : -1);
  if (!given.length || !got.length) return;
  const from = given.map(place);
  got.forEach((part, at) => {
    const own = place(part), share = opens ? (at + .5) / got.length - .5 : 0;
    const x = mean(from, "x") + (get === "ten" ? share * from[0].wide : 0) - own.x;
    const y = mean(from, "y") + (get === "one" ? share * from[0].high : 0) - own.y;
    part.animate([{ transform: `translate(${x}px, ${y}px)` }, { transform: "none" }], { duration: LONG, easing: "ease-out" });
  });
}
