/* The open number line. The child chooses where to start, which way to jump, how far, and writes where it lands: the
   page works nothing out. A size can be tapped or dragged onto the line.
   Expects [data-line-box], [data-start], [data-jump] keys ("-10", "other"), [data-sum]. */
import { say } from "./texts.js";
import { createDrag } from "./drag.js";
import { drawLine } from "./strategy-draw.js";

export function createLine(root, actions) {
  const box = root.querySelector("[data-line-box]");
  const starter = root.querySelector("[data-start]");
  const sum = root.querySelector("[data-sum]");
  let state = null;

  starter.addEventListener("click", () =>
    actions.ask(say("strategy.line.start"), at => actions.add({ do: "start", at })));

  function land(by) {
    actions.ask(say(by > 0 ? "strategy.line.land.forward" : "strategy.line.land.back", Math.abs(by)),
      to => actions.add({ do: "jump", by, to }));
  }

  function jump(size) {
    if (actions.locked || state.start === null) return;
    if (size === "forward" || size === "back") {
      actions.ask(say(`strategy.line.size.${size}`), by => {
        if (by > 0) land(size === "back" ? -by : by);
      });
    } else {
      land(Number(size));
    }
  }

  root.querySelectorAll("[data-jump]").forEach(each => each.addEventListener("click", () => {
    if (!drag.justDragged()) jump(each.dataset.jump);
  }));

  const drag = createDrag(root, {
    may: () => !actions.locked && state?.start !== null,
    what: target => {
      const node = target.closest("[data-jump]");
      return node && !node.disabled ? { node, value: node.textContent.trim(), size: node.dataset.jump } : null;
    },
    targets: () => [box],
    start() {},
    end(thing, place) { if (place) jump(thing.size); }
  });

  sum.querySelector("[data-write]").addEventListener("click", () =>
    actions.ask(say("strategy.count"), number => actions.add({ do: "write", number })));

  return {
    render(now) {
      state = now;
      drawLine(box.querySelector("svg"), state);
      const begun = state.start !== null;
      starter.hidden = state.jumps.length > 0;
      starter.querySelector("span").textContent = say(begun ? "strategy.line.other-start" : "strategy.line.begin");
      starter.disabled = actions.locked;
      root.querySelectorAll("[data-jump]").forEach(each => { each.disabled = !begun || actions.locked; });
      const sizes = state.jumps.map((each, at) => `${each.by < 0 ? "−" : at === 0 ? "" : "+"} ${Math.abs(each.by)}`);
      sum.querySelector("[data-sizes]").textContent = sizes.join(" ").trim();
      const write = sum.querySelector("[data-write]");
      write.querySelector("b").textContent = state.written ?? "";
      write.classList.toggle("full", state.written !== null);
      write.disabled = actions.locked;
    },
    enter() {}
  };
}
