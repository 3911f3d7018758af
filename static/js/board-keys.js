/* The Board. Expects <main data-board data-path data-step data-steps data-csrf> and, where there is more to show, data-next
   and data-before (the pages after and before). Parts stand from [data-from] until before [data-until]; with [data-swap]
   they take no room outside of it, otherwise they keep their place; from [data-away-from] until before [data-away-until]
   they are gone in between. [data-lit] gets the class "lit" from its step on.
   Without this script the links Back and Next do the same, and the server shows each step.
   Forward: Space, PageDown, →, N. Back: PageUp, ←, Shift+Space, P. First: Home. Blank: B or "."
   The step stands in the address (?step=), so that F5 comes back to it. Every window of the Board shows the same: each
   says what it shows, and follows what another says. Buttons [data-mark] are pressed and let go: words the class calls
   out, what the class chooses ([data-one]: one of a kind), what she covers. Links with [data-ask] ask before leaving. */
import { trade } from "./board-trade.js";
import { openStream } from "./teacher-stream.js";

let board = document.querySelector("[data-board]");
const FRESH = 3000;
let step = 1, shown = "", listening = false;
const me = Math.random().toString(36).slice(2);
const isStage = () => document.body.classList.contains("on-stage");
const marks = () => [...board.querySelectorAll("[data-mark][aria-pressed=true]")].map(each => each.dataset.mark);

function draw() {
  for (const part of board.querySelectorAll("[data-from], [data-until]")) {
    const away = step >= Number(part.dataset.awayFrom ?? Infinity) && step < Number(part.dataset.awayUntil ?? Infinity);
    const on = !away && step >= Number(part.dataset.from ?? 1) && step < Number(part.dataset.until ?? Infinity);
    part.classList.toggle(part.dataset.swap === undefined ? "later" : "out", !on);
  }
  board.querySelectorAll("[data-lit]").forEach(part => part.classList.toggle("lit", step >= Number(part.dataset.lit)));
  const dots = board.querySelector(".steps");
  const many = Number(board.dataset.steps);
  dots?.replaceChildren(...(many < 2 ? [] : Array.from({ length: many }, (_, at) => {
    const dot = document.createElement("i");
    dot.classList.toggle("now", at + 1 === step);
    return dot;
  })));
  const here = at => (many < 2 ? board.dataset.path : `${board.dataset.path}${board.dataset.path.includes("?") ? "&" : "?"}step=${at}`);
  if (!isStage()) history.replaceState(null, "", here(step));
  const links = [["[data-back]", step > 1 ? here(step - 1) : board.dataset.before],
    ["[data-onward]", step < many ? here(step + 1) : board.dataset.next]];
  links.forEach(([which, href]) => { const link = document.querySelector(which); if (link && href) link.href = href; });
}

function start(from = board.dataset.step) {
  step = Math.min(Number(board.dataset.steps), Math.max(1, Number(from) || 1));
  board.dataset.ready = "";
  draw();
}

/* Tells the other windows. */
function say() {
  if (isStage() || board.dataset.path === "/board/size" || board.dataset.path === "/board/two"
    || board.dataset.path === "/board/strategy") return;
  const now = { path: board.dataset.path, step, marks: marks().join(","), blank: document.body.classList.contains("blank") ? "yes" : "no" };
  if (JSON.stringify(now) === shown) return;
  shown = JSON.stringify(now);
  fetch("/board/stage", { method: "POST", body: new URLSearchParams({ ...now, window: me, csrf: board.dataset.csrf }) })
    .catch(() => { shown = ""; });
}

function go(to) {
  const before = step;
  const many = Number(board.dataset.steps);
  if (to > many && board.dataset.next) { visit(board.dataset.next); return; }
  if (to < 1 && board.dataset.before) { visit(board.dataset.before); return; }
  step = Math.min(many, Math.max(1, to));
  draw();
  if (step === before + 1) trade(board);
  say();
}

/* Another page of the Board in this one's place: full screen stays. */
async function visit(address, { quietly = false } = {}) {
  const answer = await fetch(address, { cache: "no-store" }).catch(() => null);
  const text = answer?.ok ? await answer.text() : "";
  const next = new DOMParser().parseFromString(text, "text/html");
  const main = next.querySelector("[data-board]");
  if (!main) { if (answer && !quietly) location.assign(address); return; }
  const pressed = main.dataset.path === board.dataset.path ? marks() : [];
  const blank = document.body.classList.contains("blank");
  const still = document.body.classList.contains("still");
  board.replaceWith(main);
  board = main;
  document.querySelector(".board-nav")?.replaceWith(...[next.querySelector(".board-nav")].filter(Boolean));
  document.body.className = next.body.className;
  document.body.classList.toggle("blank", blank);
  document.body.classList.toggle("still", still);
  document.title = next.title;
  pressed.forEach(mark => board.querySelector(`[data-mark="${mark}"]`)?.setAttribute("aria-pressed", "true"));
  start();
  if (!quietly) say();
}

function press(button, pressed) {
  if (button.dataset.one && pressed) {
    board.querySelectorAll(`[data-one="${button.dataset.one}"]`).forEach(each => each.setAttribute("aria-pressed", "false"));
  }
  button.setAttribute("aria-pressed", String(pressed));
}

/* What another window says. */
async function follow(data) {
  const now = JSON.parse(data);
  if (now.window === me) return;
  if (!isStage() && !listening) { listening = true; say(); return; }   /* the laptop's own window says what stands */
  if (now.path !== board.dataset.path) await visit(isStage() ? "/board/stage" : now.path, { quietly: true });
  if (now.path !== board.dataset.path) return;
  const before = step;
  step = Math.min(Number(board.dataset.steps), Math.max(1, now.step));
  board.querySelectorAll("[data-mark]").forEach(each => each.setAttribute("aria-pressed", String(now.marks.includes(each.dataset.mark))));
  document.body.classList.toggle("blank", now.blank);
  draw();
  if (step === before + 1) trade(board);
}

/* The class's work, or today's door, is another now: the same step of the page as it is now. While thirty children write
   this is told many times a second; once in a while is enough. */
let freshSoon = 0;
function fresh() {
  if (board.dataset.fresh === undefined || freshSoon) return;
  freshSoon = setTimeout(() => {
    freshSoon = 0;
    if (board.dataset.fresh !== undefined) visit(isStage() ? "/board/stage" : location.href, { quietly: true });
  }, FRESH);
}

function ask(link) {
  const dialog = document.createElement("dialog");
  dialog.className = "ask-first";
  const text = document.createElement("p"), form = document.createElement("form");
  text.textContent = link.dataset.ask;
  form.method = "dialog";
  [["Stay on the Board", "stay"], ["It is off: go on", "go"]].forEach(([word, value]) => {
    const button = document.createElement("button");
    button.className = "board-link";
    button.value = value;
    button.textContent = word;
    form.append(button);
  });
  dialog.append(text, form);
  dialog.addEventListener("close", () => { if (dialog.returnValue === "go") location.assign(link.href); dialog.remove(); });
  document.body.append(dialog);
  dialog.showModal();
}

if (board) {
  const busy = event => event.target.closest?.("input, textarea, select") !== null && event.target.closest?.("input, textarea, select") !== undefined
    || Boolean(event.target.closest?.("button, a")) && (event.key === " " || event.key === "Enter");

  document.addEventListener("keydown", event => {
    if (event.ctrlKey || event.altKey || event.metaKey || document.querySelector("dialog[open]") || busy(event)) return;
    const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    const forward = key === "PageDown" || key === "ArrowRight" || key === "n" || key === " " && !event.shiftKey;
    const back = key === "PageUp" || key === "ArrowLeft" || key === "p" || key === " " && event.shiftKey;
    const blank = key === "b" || key === ".";
    if (!forward && !back && !blank && key !== "Home") return;
    event.preventDefault();
    if (event.repeat) return;                               /* a held key moves once */
    if (forward || back) go(step + (forward ? 1 : -1));
    else if (key === "Home") go(1);
    else { document.body.classList.toggle("blank"); say(); }
  });

  document.addEventListener("click", event => {
    const link = event.target.closest("a");
    const button = event.target.closest("[data-mark]");
    if (link?.dataset.ask) {
      event.preventDefault();
      ask(link);
    } else if (link?.dataset.stageWindow !== undefined) {
      event.preventDefault();
      window.open(link.href, "fewermore-stage", "popup,width=960,height=540");
    } else if (link && link.closest(".board-nav")) {
      event.preventDefault();
      if (link.dataset.onward !== undefined) go(step + 1);
      else if (link.dataset.back !== undefined) go(step - 1);
      else visit(link.href);
      if (event.detail > 0) document.activeElement?.blur();
    } else if (button) {
      press(button, button.getAttribute("aria-pressed") !== "true");
      if (event.detail > 0) button.blur();                  /* so that the space bar still goes on */
      say();
    }
  });

  /* The mouse rests: the controls leave the picture. */
  let rest = 0;
  const moved = () => {
    document.body.classList.remove("still");
    clearTimeout(rest);
    rest = setTimeout(() => document.body.classList.add("still"), 3000);
  };
  ["mousemove", "pointerdown", "focusin"].forEach(name => document.addEventListener(name, moved));
  moved();

  start(new URLSearchParams(location.search).get("step") ?? board.dataset.step);
  openStream("/live/board", { whole: follow, stage: follow, change: fresh },
    { poll: () => (isStage() ? visit("/board/stage", { quietly: true }) : fresh()) });
}
