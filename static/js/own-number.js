/* A number of the child's own for the bars: digits, one less, one more, ready.
   Expects [data-own] holding [data-making] and [data-keys=own]. */
import { tooSoon } from "./once.js";

const LONGEST = 3;

export function createOwnNumber(root, ready) {
  const making = root.querySelector("[data-making]");
  const gates = {};
  let number = "";

  function show() {
    making.textContent = number;
  }

  root.querySelector("[data-keys]").addEventListener("click", event => {
    const key = event.target.closest("[data-key]")?.dataset.key;
    if (!key) return;
    if (/\d/.test(key)) {
      gates[key] = gates[key] ?? {};
      if (tooSoon(gates[key], event, 150)) return;
      if (number.length < LONGEST) number = (number === "0" ? "" : number) + key;
    } else if (key === "back") {
      number = number.slice(0, -1);
    } else if (key === "less") {
      number = String(Math.max(0, Number(number) - 1));
    } else if (key === "more") {
      number = String(Math.min(999, Number(number) + 1));
    } else {
      ready(number);
      return;
    }
    show();
  });

  return {
    open() {
      number = "";
      show();
      root.hidden = false;
      root.querySelector("[data-key]").focus();
    },
    close() {
      root.hidden = true;
    }
  };
}
