/* Expanded form: a tap on a place opens the keys. Which number comes first, and whether the parts are put together or
   taken away, is the child's to say. Expects rows [data-row], places [data-cell], [data-regroup], [data-sign]. */
import { say } from "./texts.js";

export function createExpanded(root, actions) {
  const at = selector => root.querySelector(selector);
  const cell = name => at(`[data-cell="${name}"]`);
  const ROWS = ["first", "second"];
  let state = null;
  const left = new Map();               /* work → what is half typed there, kept while another problem is open */
  let half = {};                        /* what is typed of a row that is not whole yet: {"first": {tens}} */
  let chosen = { first: null, second: null };
  let regrouping = null;                /* the row that is being regrouped */
  let sign = null;
  let open = null;                      /* the work of the open problem */

  const numbers = () => actions.numbers();
  const numberOf = row => state[row].number ?? chosen[row] ?? numbers()[row === "first" ? 0 : 1] ?? null;

  function ask(row, place) {
    const key = regrouping === row ? `${row}-again` : row;
    const words = { tens: say("strategy.places.ten"), ones: say("strategy.places.one") };
    actions.ask(say("strategy.expanded.ask", words[place], row === "result" ? "" : numberOf(row)).trim(), number => {
      half[key] = { ...half[key], [place]: number };
      const { tens, ones } = half[key];
      if (tens === undefined || ones === undefined) {
        actions.redraw();
        const other = place === "tens" ? "ones" : "tens";
        cell(`${key}-${other}`).focus();
        return;
      }
      const parts = { tens, ones };
      const again = regrouping === row;
      delete half[key];
      if (again) regrouping = null;
      actions.add(again ? { do: "regroup", row, ...parts } : { do: "break", row, number: numberOf(row), ...parts });
    });
  }

  ROWS.forEach(row => {
    ["tens", "ones"].forEach(place => {
      cell(`${row}-${place}`).addEventListener("click", () => ask(row, place));
      cell(`${row}-again-${place}`).addEventListener("click", () => ask(row, place));
    });
    at(`[data-number="${row}"]`).addEventListener("click", () => {
      const all = numbers();
      if (all.length < 2) {
        actions.ask(say("strategy.expanded.number"), number => { chosen[row] = number; actions.redraw(); });
        return;
      }
      chosen[row] = all[(all.indexOf(numberOf(row)) + 1) % all.length];
      actions.redraw();
    });
  });
  ["tens", "ones"].forEach(place => {
    cell(`result-${place}`).addEventListener("click", () => actions.ask(
      say("strategy.expanded.comes", say(place === "tens" ? "strategy.places.ten" : "strategy.places.one")),
      to => actions.add({ do: "combine", place, to })));
    cell(`result-again-${place}`).addEventListener("click", () => ask("result", place));
  });
  cell("written").addEventListener("click", () =>
    actions.ask(say("strategy.expanded.whole"), number => actions.add({ do: "write", number })));
  at("[data-sign]").addEventListener("click", () => {
    sign = shownSign() === "−" ? "+" : "−";
    actions.redraw();
  });
  root.querySelectorAll("[data-regroup]").forEach(each => each.addEventListener("click", () => {
    regrouping = regrouping === each.dataset.regroup ? null : each.dataset.regroup;
    actions.redraw();
    if (regrouping) cell(`${regrouping}-again-tens`).focus();
  }));

  const shownSign = () => sign ?? actions.sign() ?? "±";

  function draw(name, value, { old = false, label, locked = false }) {
    const node = cell(name);
    node.textContent = value ?? "";
    node.classList.toggle("full", value !== undefined && value !== null);
    node.classList.toggle("old", old);
    node.disabled = actions.locked || locked;
    node.setAttribute("aria-label", say("strategy.cell", label, value ?? say("bars.empty")));
  }

  function drawRow(row) {
    const { parts } = state[row];
    const number = numberOf(row);
    const open = regrouping === row, again = parts.length > 1 || open;
    const shown = at(`[data-number="${row}"]`);
    shown.textContent = number ?? "?";
    shown.disabled = actions.locked || parts.length > 0;
    shown.setAttribute("aria-label", say("strategy.expanded.which", number ?? say("bars.empty")));
    const written = parts[0] ?? half[row] ?? {};
    const later = parts.length > 1 ? parts[parts.length - 1] : half[`${row}-again`] ?? {};
    ["tens", "ones"].forEach(place => {
      const label = `${number ?? ""} ${say(place === "tens" ? "strategy.places.ten" : "strategy.places.one")}`;
      draw(`${row}-${place}`, written[place], { old: parts.length > 1, label, locked: parts.length > 0 });
      draw(`${row}-again-${place}`, later[place], { label, locked: !open });
    });
    at(`[data-again="${row}"]`).hidden = !again;
    const key = at(`[data-regroup="${row}"]`);
    key.hidden = parts.length === 0;
    key.disabled = actions.locked;
    key.setAttribute("aria-pressed", String(open));
  }

  return {
    render(now) {
      state = now;
      ROWS.forEach(drawRow);
      const signNode = at("[data-sign]");
      signNode.textContent = shownSign();
      signNode.disabled = actions.locked;
      signNode.setAttribute("aria-label", say({ "+": "strategy.sign.plus", "−": "strategy.sign.minus" }[shownSign()]
        ?? "strategy.sign.none"));
      const { result } = state;
      const open = regrouping === "result";
      ["tens", "ones"].forEach(place => {
        const label = say(place === "tens" ? "strategy.places.ten" : "strategy.places.one");
        draw(`result-${place}`, state[place], { old: result.length > 0, label, locked: result.length > 0 });
        draw(`result-again-${place}`, result.length > 0 ? result[result.length - 1][place]
          : (half["result-again"] ?? half.result ?? {})[place], { label, locked: !open });
      });
      at("[data-again='result']").hidden = result.length === 0 && !open;
      const key = at("[data-regroup='result']");
      key.hidden = state.tens === null || state.ones === null;
      key.disabled = actions.locked;
      key.setAttribute("aria-pressed", String(open));
      draw("written", state.written, { label: say("strategy.expanded.whole") });
    },
    enter(work) {
      if (open) left.set(open, { half, chosen, regrouping, sign });
      open = work;
      ({ half, chosen, regrouping, sign } = left.get(work)
        ?? { half: {}, chosen: { first: null, second: null }, regrouping: null, sign: null });
    }
  };
}
