/* The page's own keys for a number of a strategy: it asks in words, a child types, "ready" gives the number.
   Expects [data-pad] holding [data-pad-ask], [data-pad-number], keys [data-key] (digits, back, ready, away). A real
   keyboard types too. */
import { tooSoon } from "./once.js";

const LONGEST = 3, SAME_KEY = 150;

export function createPad(root, opened) {
  const asked = root.querySelector("[data-pad-ask]"), shown = root.querySelector("[data-pad-number]");
  let gates = {}, number = "", then = null, from = null;

  function show() {
    shown.textContent = number;
    root.querySelector("[data-key=ready]").disabled = number === "";
  }

  function press(key, event) {
    if (/^\d$/.test(key)) {
      gates[key] = gates[key] ?? {};
      if (tooSoon(gates[key], event, SAME_KEY)) return;
      if (number.length < LONGEST) number = (number === "0" ? "" : number) + key;
    } else if (key === "back") {
      number = number.slice(0, -1);
    } else if (key === "away") {
      close();
      return;
    } else if (number !== "") {
      const give = then, got = Number(number);
      close();
      give(got);
      return;
    }
    show();
  }

  root.addEventListener("click", event => {
    const key = event.target.closest("[data-key]")?.dataset.key;
    if (key) press(key, event);
  });

  root.addEventListener("keydown", event => {
    const key = /^\d$/.test(event.key) ? event.key
      : { Backspace: "back", Escape: "away" }[event.key];
    if (!key) return;
    event.preventDefault();
    press(key, event);
  });

  function close() {
    if (root.hidden) return;
    root.hidden = true;
    then = null;
    opened(false);
    from?.classList.remove("asked");
    if (from?.isConnected && !from.disabled) from.focus();
  }

  return {
    /* @param text what is asked  @param give(number) */
    ask(text, give) {
      from = document.activeElement;
      asked.textContent = text;
      number = "";
      gates = {};                         /* a sticky finger sticks on one number only */
      then = give;
      root.hidden = false;
      opened(true);
      show();
      from?.classList.add("asked");
      from?.scrollIntoView({ block: "nearest" });
      root.querySelector("[data-key]").focus();
    },
    close,
    get open() { return !root.hidden; }
  };
}
