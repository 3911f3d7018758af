/* All tablets are paused: the page covers itself with what the laptop says, until it answers that they go on. What was
   typed stays as it is and goes on being sent. Expects dialog[data-pause] with [data-pause-say]. */
import * as outbox from "./outbox.js";

const ASK = 4000;

export function createPause() {
  const cover = document.querySelector("[data-pause]");
  const text = cover.querySelector("[data-pause-say]");
  let timer = 0;

  document.querySelector("[data-paused-line]")?.remove();   /* it is for a page without script */

  /* The clock of "Still you?" does not run in a pause: this counts as a touch. */
  const stopTheClock = () => document.dispatchEvent(new Event("input"));

  function again() {
    clearTimeout(timer);
    timer = setTimeout(async () => {
      if (!cover.open) return;
      stopTheClock();
      await outbox.pulse();
      again();
    }, ASK);
  }

  outbox.on("answer", reply => {
    if (typeof reply.paused !== "boolean" || !cover.isConnected) return;
    if (reply.paused) {
      text.textContent = reply.pause ?? "";
      if (!cover.open) {
        cover.showModal();
        text.focus();
        again();
      }
    } else if (cover.open) {
      stopTheClock();
      cover.close();
    }
  });
  cover.addEventListener("cancel", event => event.preventDefault());
  cover.addEventListener("keydown", event => {
    if (event.key === "Escape") event.preventDefault();
  });
  outbox.pulse();
}
