/* The laptop's address can change: then this page's own address leads nowhere, and what waits here with it. After a
   few tries without an answer the page asks for the address the board shows now, and sends there.
   Expects [data-new-address][hidden] holding a form with input[name=address], [data-no-answer][hidden] and
   a[data-go-there][hidden]. It may come later, with a template. */
import * as outbox from "./outbox.js";

const ASK_AFTER = 5;
const TYPED = /^(?:\w+:\/\/)?([a-z0-9.-]+\.[a-z0-9-]+)(?::(\d{1,5}))?\/?$/i;

/* @returns for example "http://192.168.1.57:8420", or "" when it is no address; the port of this page if none is typed */
function origin(typed) {
  const found = TYPED.exec(typed.trim());
  return found ? `${location.protocol}//${found[1].toLowerCase()}:${found[2] ?? (location.port || "80")}` : "";
}

export function start() {
  let asked = "", since = 0;

  function draw() {
    document.querySelectorAll("[data-new-address]").forEach(box => {
      const waits = outbox.waiting() > 0;
      const there = asked !== "" && !waits;
      box.hidden = !there && !(waits && outbox.unanswered() >= ASK_AFTER) && !(asked !== "" && waits);
      box.querySelector("[data-no-answer]").hidden = asked === "" || !waits || outbox.unanswered() < since + 2;
      box.querySelector("form").hidden = there;
      const go = box.querySelector("[data-go-there]");
      go.hidden = !there;
      if (there) go.href = `${asked}/come-in`;
    });
  }

  document.addEventListener("submit", event => {
    if (!event.target.closest("[data-new-address]")) return;
    event.preventDefault();
    asked = origin(event.target.elements.address.value);
    since = outbox.unanswered();
    outbox.goesTo(asked);
    draw();
  });
  outbox.on("change", draw);
  draw();
}
