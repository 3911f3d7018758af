/* Two bars and a gap, drawn by hand or by taps. Both bars begin at the zero line, whatever is done to them.

   Who has more: pull a bar's end, or tap it. Where a number belongs: drag its chip, or tap the chip and then the
   place (or the place and then the chip). A chip may be used more than once and any number may be made with the
   pencil, so that whatever a child thinks can be shown. A number on a place is picked up by a tap; tapped again it
   is taken off; put on another place it changes places with what is there.

   Expects the [data-for=bars] panel of pages/child/mine.html. */
import { say } from "./texts.js";
import { createDrag, createPull } from "./drag.js";
import { createOwnNumber } from "./own-number.js";

const PLACES = ["0", "1", "gap"];

export function createBars(panel, context) {
  const lanes = [...panel.querySelectorAll("[data-lane]")];
  const gap = panel.querySelector("[data-gap]");
  const tray = panel.querySelector("[data-tray]");
  const other = panel.querySelector("[data-other]");
  const places = Object.fromEntries(PLACES.map(name => [name, panel.querySelector(`[data-place="${name}"]`)]));
  const own = createOwnNumber(panel.querySelector("[data-own]"), number => {
    closeOwn();
    if (number === "") return;
    if (!chipValues(context.problem).includes(number)) context.problem.own.push(number);
    picked = { value: number };
    context.redraw();
    chipOf(number)?.focus();
  });
  let picked = null;                    /* {value, place?}: what the next tap puts down; place: where it lay */
  let wanted = null;                    /* a place tapped first, waiting for a number */

  const at = (bars, name) => (name === "gap" ? bars.gap : bars.lanes[Number(name)]);
  const set = (bars, name, value) => {
    if (name === "gap") bars.gap = value;
    else bars.lanes[Number(name)] = value;
  };

  function put(name, value, from) {
    context.change(({ bars }) => {
      const before = at(bars, name);
      set(bars, name, value);
      if (from !== undefined && from !== name) set(bars, from, before);
    });
  }

  function drop() {
    picked = null;
    wanted = null;
  }

  /* ---- who has more ---- */

  function makeLonger(lane) {
    drop();
    context.change(({ bars }) => { bars.longer = lane; });
  }

  lanes.forEach((lane, index) => {
    const bar = lane.querySelector(".bar");
    lane.querySelector("[data-longer]").addEventListener("click", () => {
      if (!pull.justPulled()) makeLonger(String(index));
    });
    bar.addEventListener("click", event => {
      const open = context.problem.state.bars.longer === "";
      if (open && !event.target.closest("button") && !pull.justPulled()) makeLonger(String(index));
    });
  });

  const pull = createPull(lanes.map(lane => lane.querySelector(".bar")), {
    may: () => !context.locked,
    end(index, longer) { makeLonger(String(longer ? index : 1 - index)); }
  });

  /* ---- chips and places ---- */

  function tapChip(value) {
    if (context.locked) return;
    if (wanted) {
      const name = wanted;
      drop();
      put(name, value);
      return;
    }
    picked = picked && picked.place === undefined && picked.value === value ? null : { value };
    context.redraw();
  }

  function tapPlace(name) {
    if (context.locked) return;
    const lying = at(context.problem.state.bars, name);
    if (picked) {
      const { value, place } = picked;
      drop();
      if (place === name) put(name, "");
      else put(name, value, place);
      context.redraw();
    } else if (lying) {
      picked = { value: lying, place: name };
      context.redraw();
    } else {
      wanted = wanted === name ? null : name;
      context.redraw();
    }
  }

  const drag = createDrag(panel, {
    may: () => !context.locked,
    what(target) {
      const chip = target.closest("[data-chip]");
      if (chip) return { value: chip.dataset.chip, node: chip };
      const place = target.closest("[data-place]");
      const value = place && at(context.problem.state.bars, place.dataset.place);
      return value ? { value, node: place, place: place.dataset.place } : null;
    },
    targets: () => Object.values(places).filter(place => !place.hidden),
    start: drop,
    end({ value, place }, target) {
      if (target) put(target.dataset.place, value, place);
      else if (place) put(place, "");
      context.redraw();
    }
  });

  panel.addEventListener("click", event => {
    if (drag.justDragged()) return;
    const chip = event.target.closest("[data-chip]");
    const place = event.target.closest("[data-place]");
    if (chip) tapChip(chip.dataset.chip);
    else if (place) tapPlace(place.dataset.place);
  });

  /* ---- another number ---- */

  other.addEventListener("click", () => {
    tray.hidden = true;
    own.open();
  });

  function closeOwn() {
    own.close();
    tray.hidden = false;
    other.focus();
  }

  /* ---- drawing ---- */

  function chipValues(problem) {
    const { lanes: onLanes, gap: onGap } = problem.state.bars;
    return [...new Set([...problem.numbers, "?", ...problem.own, ...onLanes, onGap])].filter(Boolean);
  }

  const chipOf = value => tray.querySelector(`[data-chip="${CSS.escape(value)}"]`);
  const word = value => (value === "" ? say("bars.empty") : value === "?" ? say("bars.unknown") : value);

  function drawChips(problem) {
    const used = PLACES.map(name => at(problem.state.bars, name));
    const values = chipValues(problem);
    const have = [...tray.querySelectorAll("[data-chip]")].map(chip => chip.dataset.chip);
    if (have.join(" ") !== values.join(" ")) {
      tray.querySelectorAll("[data-chip]").forEach(chip => chip.remove());
      values.forEach(value => {
        const chip = document.createElement("button");
        chip.type = "button";
        chip.className = "chip";
        chip.dataset.chip = value;
        chip.textContent = value;
        if (value === "?") chip.setAttribute("aria-label", say("bars.unknown"));
        other.before(chip);
      });
    }
    tray.querySelectorAll("[data-chip]").forEach(chip => {
      const value = chip.dataset.chip;
      chip.classList.toggle("used", used.includes(value));
      chip.setAttribute("aria-pressed", String(picked?.value === value && picked.place === undefined));
      chip.disabled = context.locked;
    });
    other.disabled = context.locked;
  }

  function render(problem) {
    if (problem !== shown) {
      shown = problem;
      drop();
      own.close();
      tray.hidden = false;
    }
    const { bars } = problem.state;
    const decided = bars.longer !== "";
    lanes.forEach((lane, index) => {
      const name = problem.lanes[index].name;
      const longer = bars.longer === String(index);
      const grip = lane.querySelector("[data-longer]");
      lane.querySelector(".bar").className =
        `bar ${!decided ? "same w-66" : longer ? "longer w-86" : "shorter w-54"}`;
      lane.querySelector(".who").textContent = name;
      grip.setAttribute("aria-label", longer ? say("bars.is-longer", name) : say("bars.longer", name));
      grip.setAttribute("aria-pressed", String(longer));
      grip.disabled = context.locked;
      if (decided && !longer && gap.parentElement !== lane) lane.append(gap);
    });
    gap.className = "gap w-32";
    gap.hidden = !decided;
    PLACES.forEach(name => drawPlace(problem, name, decided));
    tray.classList.toggle("unborn", !decided);
    drawChips(problem);
  }

  function drawPlace(problem, name, decided) {
    const place = places[name];
    const value = at(problem.state.bars, name);
    const lifted = picked?.place === name;
    place.hidden = !decided;
    place.textContent = value;
    place.classList.toggle("full", value !== "");
    place.classList.toggle("lifted", lifted);
    place.classList.toggle("wanted", wanted === name || (picked !== null && value === ""));
    place.setAttribute("aria-pressed", String(lifted || wanted === name));
    place.disabled = context.locked;
    place.setAttribute("aria-label", name === "gap" ? say("bars.gap", word(value))
      : say("bars.bar", problem.lanes[Number(name)].name, word(value)));
  }

  let shown = null;

  return {
    render,
    ask(problem) {
      if (problem.state.bars.longer === "") return say("bars.ask");
      return picked ? say("bars.put", word(picked.value)) : say("bars.place");
    }
  };
}

/* The child's own bars, right or wrong, small above the equation. */
export function drawMini(mini, problem) {
  const { bars } = problem.state;
  const lanes = [...mini.querySelectorAll(".lane")];
  const gap = mini.querySelector(".gap");
  mini.hidden = bars.longer === "";
  if (mini.hidden) return;
  lanes.forEach((lane, index) => {
    const longer = bars.longer === String(index);
    lane.querySelector(".bar").className = `bar ${longer ? "longer w-86" : "shorter w-54"}`;
    lane.querySelector(".who").textContent = problem.lanes[index].name;
    drawNumber(lane.querySelector(".bar .n"), bars.lanes[index]);
    if (!longer) lane.append(gap);
  });
  gap.className = "gap w-32";
  drawNumber(gap.querySelector(".n"), bars.gap);
  const word = value => (value === "" ? say("bars.empty") : value === "?" ? say("bars.unknown") : value);
  const longer = Number(bars.longer);
  mini.setAttribute("aria-label", say("bars.own", problem.lanes[longer].name, word(bars.lanes[longer]),
    word(bars.lanes[1 - longer]), word(bars.gap)));
}

function drawNumber(node, value) {
  node.textContent = value;
  node.className = value === "?" ? "n unknown" : "n";
  node.hidden = value === "";
}
