/* Base-ten pieces. A tap on a column picks its last piece; the keys below say what becomes of it. So a ten is traded in
   two taps: the ten, "Trade". Dragging does the same: from the box onto the mat, a ten onto the ones, a piece onto
   "Take away". Expects [data-box] of [data-put], [data-mat], [data-do] keys, [data-count]. */
import { say } from "./texts.js";
import { createDrag } from "./drag.js";
import { PIECES, isNone } from "./strategy-steps.js";
import { drawColumn } from "./strategy-draw.js";

const NEXT = { hundred: "ten", ten: "one" };
const ABOVE = { ten: "hundred", one: "ten" };

export function createPieces(root, actions) {
  const mat = root.querySelector("[data-mat]");
  const secondPile = root.querySelector("[data-second-pile]");
  const keys = Object.fromEntries([...root.querySelectorAll("[data-do]")].map(each => [each.dataset.do, each]));
  let picked = null;                    /* {pile, piece} */
  let onSecond = false;
  let state = null;

  const trading = () => {
    if (!picked || picked.pile !== 1) return [];
    const { piece } = picked;
    return [
      ["trade-down", NEXT[piece] && { do: "trade", give: piece, get: NEXT[piece] }],
      ["trade-up", ABOVE[piece] && { do: "trade", give: piece, get: ABOVE[piece] }]
    ].filter(([, step]) => step && actions.can(step));
  };

  const put = (piece, pile) => actions.add({ do: "put", pile, piece, count: 1 });

  root.querySelectorAll("[data-put]").forEach(each => each.addEventListener("click", () => {
    if (!drag.justDragged()) put(each.dataset.put, onSecond ? 2 : 1);
  }));

  secondPile.addEventListener("click", () => {
    onSecond = !onSecond;
    actions.redraw();
  });

  mat.addEventListener("click", event => {
    const column = event.target.closest("[data-column]");
    if (!column || drag.justDragged() || actions.locked) return;
    const { column: piece, pile } = column.dataset;
    const same = picked?.piece === piece && picked.pile === Number(pile);
    picked = same ? null : { piece, pile: Number(pile) };
    actions.redraw();
  });

  keys.trade.addEventListener("click", () => {
    const [first] = trading();
    if (first) actions.add(first[1]);
  });
  keys.away.addEventListener("click", () => {
    if (picked) actions.add({ do: "cross-out", piece: picked.piece, count: 1 });
  });
  keys.back.addEventListener("click", () => {
    if (picked) actions.add({ do: "put-back", pile: picked.pile, piece: picked.piece, count: 1 });
  });
  keys.join.addEventListener("click", () => {
    onSecond = false;
    actions.add({ do: "join" });
  });
  root.querySelector("[data-count]").addEventListener("click", () =>
    actions.ask(say("strategy.count"), number => actions.add({ do: "write", number })));

  const drag = createDrag(root, {
    may: () => !actions.locked,
    what(target) {
      const from = target.closest("[data-put]");
      if (from) return { node: from, value: from.textContent.trim(), piece: from.dataset.put, box: true };
      const column = target.closest("[data-column]");
      if (!column || column.dataset.some !== "yes") return null;
      return { node: column, value: say(`strategy.piece.${column.dataset.column}`), piece: column.dataset.column,
        pile: Number(column.dataset.pile) };
    },
    targets: () => [...mat.querySelectorAll("[data-column]"), keys.away, keys.back].filter(each => !each.hidden),
    start() { picked = null; },
    end(thing, place) {
      if (!place) return;
      if (thing.box) {
        if (place.dataset.pile) put(thing.piece, Number(place.dataset.pile));
      } else if (place === keys.away) {
        if (thing.pile === 1) actions.add({ do: "cross-out", piece: thing.piece, count: 1 });
      } else if (place === keys.back) {
        actions.add({ do: "put-back", pile: thing.pile, piece: thing.piece, count: 1 });
      } else if (place.dataset.column !== thing.piece && thing.pile === 1) {
        actions.add({ do: "trade", give: thing.piece, get: place.dataset.column });
      }
    }
  });

  function drawPile(pile, number) {
    const shown = PIECES.filter(piece => piece !== "hundred" || pile.hundred + state.out.hundred
      + state.traded.hundred > 0 || (picked?.piece === "ten" && number === 1 && pile.ten >= 10));
    const holder = mat.querySelector(`[data-pile-of="${number}"]`);
    PIECES.forEach(piece => {
      const column = holder.querySelector(`[data-column="${piece}"]`);
      const isPicked = picked?.piece === piece && picked.pile === number;
      column.hidden = !shown.includes(piece);
      column.dataset.some = pile[piece] > 0 ? "yes" : "no";
      column.setAttribute("aria-pressed", String(isPicked));
      column.disabled = actions.locked;
      const out = number === 1 ? state.out[piece] : 0;
      column.setAttribute("aria-label", say(out > 0 ? "strategy.column.out" : "strategy.column",
        say(`strategy.places.${piece}`), pile[piece], out));
      drawColumn(column.querySelector("svg"), piece, { keep: pile[piece], out, picked: isPicked,
        ghosts: number === 1 ? state.traded[piece] : 0, second: number === 2 });
    });
  }

  return {
    render(now) {
      state = now;
      if (isNone(state.first) && isNone(state.second)) picked = null;
      if (state.joined) onSecond = false;
      const two = onSecond || !isNone(state.second);
      mat.classList.toggle("two", two);
      mat.querySelector("[data-pile-of='2']").hidden = !two;
      drawPile(state.first, 1);
      drawPile(state.second, 2);
      secondPile.hidden = state.joined;
      secondPile.setAttribute("aria-pressed", String(onSecond));
      secondPile.disabled = actions.locked;
      const trade = trading()[0];
      keys.trade.querySelector("span").textContent = trade ? say(`strategy.${trade[0]}.${picked.piece}`)
        : say("strategy.trade");
      keys.trade.disabled = !trade || actions.locked;
      keys.away.disabled = !picked || picked.pile !== 1 || actions.locked || state.first[picked.piece] === 0;
      keys.back.disabled = !picked || actions.locked
        || (picked.pile === 1 ? state.first : state.second)[picked.piece] === 0;
      keys.join.hidden = isNone(state.second);
      keys.join.disabled = actions.locked;
      root.querySelectorAll("[data-put]").forEach(each => { each.disabled = actions.locked; });
      const count = root.querySelector("[data-count]");
      count.disabled = actions.locked;
      count.querySelector("b").textContent = state.written ?? "";
      count.classList.toggle("full", state.written !== null);
    },
    enter() {
      picked = null;
      onSecond = false;
    }
  };
}
