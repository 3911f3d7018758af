/* A written line: a real input, a thick caret where the next key will write, and the page's own keys.
   Expects in the panel: input[data-field], [data-caret], [data-keys] of buttons [data-key] ("back" takes back). */
import { tooSoon } from "./once.js";
import { oncePerFrame } from "./paint.js";

const SAME_KEY = 150;                   /* ms: "44" can be typed faster than any slower gate would allow */

export function createField(panel, context, { read, write, tidy }) {
  const input = panel.querySelector("[data-field]");
  const caret = panel.querySelector("[data-caret]");
  const pad = panel.querySelector("[data-keys]");
  const gates = {};
  const mirror = document.createElement("span");   /* measures: the same letters in the same font */
  const before = document.createElement("span"), after = document.createElement("span");
  const drawCaret = oncePerFrame(placeCaret);

  mirror.className = "mirror";
  mirror.setAttribute("aria-hidden", "true");
  mirror.append(before, after);
  input.after(mirror);
  const mode = input.getAttribute("inputmode") ?? "text";
  input.inputMode = "none";
  context.onOwnKeys?.(own => {
    input.inputMode = own ? mode : "none";
    pad.hidden = own;
  });

  /* A press on a key must not take the caret out of the field. */
  ["pointerdown", "mousedown"].forEach(name => pad.addEventListener(name, event => event.preventDefault()));

  pad.addEventListener("click", event => {
    const key = event.target.closest("[data-key]")?.dataset.key;
    if (!key || context.locked) return;
    gates[key] = gates[key] ?? {};
    if (key !== "back" && tooSoon(gates[key], event, SAME_KEY)) return;
    if (key === "back") takeBack();
    else type(key);
  });

  input.addEventListener("input", () => accept(input.value, input.selectionStart));
  input.addEventListener("keydown", event => {
    if (event.key === "Enter") {
      event.preventDefault();
      context.advance();
    }
  });
  /* With a keyboard at hand the caret may be typed at, whatever was tapped last. */
  document.addEventListener("keydown", event => {
    if (panel.hidden || context.locked || event.key.length !== 1 || event.key === " " || event.ctrlKey || event.metaKey
      || event.altKey || input.closest("[inert]") || event.target.closest("input, textarea, select, dialog")) return;
    input.focus();
  });

  ["click", "keyup", "focus", "blur", "select", "scroll"].forEach(name => input.addEventListener(name, drawCaret));
  document.addEventListener("selectionchange", drawCaret);
  addEventListener("resize", drawCaret);
  document.fonts.ready.then(drawCaret);
  document.fonts.addEventListener("loadingdone", drawCaret);

  function type(text) {
    const { selectionStart: from, selectionEnd: to, value, maxLength } = input;
    if (value.length - (to - from) + text.length > maxLength) return;
    accept(value.slice(0, from) + text + value.slice(to), from + text.length);
  }

  function takeBack() {
    const { selectionStart: from, selectionEnd: to, value } = input;
    if (from !== to) {
      accept(value.slice(0, from) + value.slice(to), from);
      return;
    }
    let end = from;
    while (end > 0 && value[end - 1] === " ") end -= 1;
    if (end > 0) accept(value.slice(0, end - 1) + value.slice(from === end ? from : end), end - 1);
  }

  function accept(raw, at) {
    const text = tidy(raw);
    const written = raw.slice(0, at).replace(/\s/g, "").length;
    let place = 0;
    for (let seen = 0; place < text.length && seen < written; place += 1) {
      if (text[place] !== " ") seen += 1;
    }
    while (text[place] === " ") place += 1;
    input.value = text;
    input.setSelectionRange(place, place);
    context.change(state => write(state, text), true);
    drawCaret();
  }

  /* Both widths are asked of one layout. */
  function placeCaret() {
    if (panel.hidden || !input.isConnected) return;
    const { value } = input;
    const at = input.selectionStart ?? value.length;
    before.textContent = value.slice(0, at);
    after.textContent = value.slice(at);
    const centered = getComputedStyle(input).textAlign === "center";
    const start = centered ? (input.clientWidth - mirror.getBoundingClientRect().width) / 2 : 0;
    const left = input.offsetLeft + start + before.getBoundingClientRect().width - input.scrollLeft;
    caret.style.left = `${Math.max(input.offsetLeft, Math.min(left, input.offsetLeft + input.clientWidth - 4))}px`;
    caret.hidden = context.locked || input.selectionStart !== input.selectionEnd;
  }

  function render(problem) {
    const text = read(problem);
    if (input.value !== text) {
      input.value = text;
      input.setSelectionRange(text.length, text.length);
    }
    input.readOnly = context.locked;
    pad.querySelectorAll("[data-key]").forEach(key => {
      key.disabled = context.locked;
    });
    drawCaret();
  }

  return { render };
}
