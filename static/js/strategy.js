/* The part "work it out": a child picks pieces, the number line or tens and ones, and a second of them to check the
   first. Each change is a step; a step is sent and undone like any other change of the work.
   Expects the markup of pages/fragments/strategy.html. */
import { say } from "./texts.js";
import { can, describe, fold, MOST_STEPS } from "./strategy-steps.js";
import { createPad } from "./strategy-pad.js";
import { createPieces } from "./strategy-pieces.js";
import { createLine } from "./strategy-line.js";
import { createExpanded } from "./strategy-expanded.js";

export const KINDS = ["pieces", "line", "expanded"];

/* Where the steps of a kind are kept: in the first strategy, or in the one that checks it; null where there is no room. */
export function slotOf(strategy, kind) {
  const { steps, check } = strategy;
  if (steps.length > 0 && strategy.kind === kind) return "first";
  if (check && check.steps.length > 0 && check.kind === kind) return "check";
  if (steps.length === 0) return "first";
  return check && check.steps.length > 0 ? null : "check";
}

export function createStrategy(panel, context, go) {
  const at = selector => panel.querySelector(selector);
  const spaces = Object.fromEntries(KINDS.map(kind => [kind, at(`[data-way="${kind}"]`)]));
  const live = at("[data-strategy-live]");
  const opened = new Map();             /* work → the kind a child left open */
  let shown = null, open = null, last = "";

  const pad = createPad(at("[data-pad]"), isOpen => panel.classList.toggle("asking", isOpen));

  const strategy = () => context.problem.state.strategy;
  const slot = () => slotOf(strategy(), open);
  const stepsOf = kind => {
    const now = strategy();
    const where = slotOf(now, kind);
    const kept = where === "first" ? now : where === "check" ? now.check : null;
    return kept && kept.kind === kind ? kept.steps : [];
  };

  const actions = {
    add(step) {
      const where = slot();
      if (context.locked || !where || !can(open, stepsOf(open), step)) return;
      context.change(state => {
        const steps = [...stepsOf(open), step];
        if (where === "first") state.strategy = { kind: open, steps, check: state.strategy.check };
        else state.strategy.check = { kind: open, steps };
      });
    },
    can: step => can(open, stepsOf(open), step),
    ask: (text, give) => { if (!context.locked && slot()) pad.ask(text, give); },
    redraw: () => context.redraw(),
    numbers,
    sign: () => {
      const found = /\d\s*([+−])\s*\d/.exec(context.problem.state.equation);
      return found ? found[1] : null;
    },
    get locked() { return context.locked || !slot(); }
  };

  /* The numbers of the child's own equation, in her order; of the story where there is no equation. */
  function numbers() {
    const own = context.problem.state.equation.match(/\d{1,3}/g)?.map(Number) ?? [];
    return own.length >= 2 ? own.slice(0, 2) : context.problem.numbers.map(Number);
  }

  const works = { pieces: createPieces(spaces.pieces, actions), line: createLine(spaces.line, actions),
    expanded: createExpanded(spaces.expanded, actions) };

  panel.querySelectorAll("[data-kind]").forEach(each => each.addEventListener("click", () => {
    pad.close();
    open = each.dataset.kind;
    opened.set(context.problem.work, open);
    context.redraw();
    at("[data-ask]").focus({ preventScroll: true });
  }));
  at("[data-to-my-work]").addEventListener("click", () => {
    pad.close();
    go();
  });

  function drawEquation(problem) {
    const line = at("[data-own-equation]");
    line.textContent = problem.state.equation.trim();
    line.hidden = line.textContent === "";
  }

  function render(problem) {
    if (problem !== shown) {
      shown = problem;
      pad.close();
      KINDS.forEach(kind => works[kind].enter(problem.work));
      open = opened.get(problem.work) ?? (problem.state.strategy.steps.length > 0 ? problem.state.strategy.kind : null);
      last = "";
    }
    const now = problem.state.strategy;
    panel.querySelectorAll(".ways [data-kind]").forEach(each => {
      const { kind } = each.dataset;
      const where = slotOf(now, kind);
      each.setAttribute("aria-pressed", String(kind === open));
      each.disabled = where === null;
      const begun = stepsOf(kind).length > 0;
      each.querySelector(".tick").className = begun ? "tick has" : "tick";
      each.querySelector("[data-slot]").textContent =
        begun ? say(where === "first" ? "strategy.first" : "strategy.check") : "";
    });
    at("[data-choose]").hidden = open !== null;
    KINDS.forEach(kind => { spaces[kind].hidden = kind !== open; });
    drawEquation(problem);
    panel.dataset.open = open ?? "";
    if (!open) return;
    const state = fold(open, stepsOf(open));
    works[open].render(state);
    const words = describe(open, state);
    if (last !== "" && words !== last) live.textContent = words;
    last = words;
    if (stepsOf(open).length >= MOST_STEPS) live.textContent = say("strategy.full");
  }

  return {
    render,
    ask: problem => {
      if (!open) return say("strategy.choose");
      if (slotOf(problem.state.strategy, open) === "check") return say("strategy.ask.check");
      return { pieces: say("strategy.ask.pieces"), line: say("strategy.ask.line"),
        expanded: say("strategy.ask.expanded") }[open];
    }
  };
}
