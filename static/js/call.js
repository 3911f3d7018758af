/* What the teacher calls to this tablet, shown once and put away by a tap. In a pause it waits: one thing at a time.
   Expects dialog[data-call] with [data-call-text] and [data-call-seen]. */
import * as outbox from "./outbox.js";

export function start() {
  const box = document.querySelector("dialog[data-call]");
  const pause = document.querySelector("dialog[data-pause]");
  let later = "";

  function show(text) {
    if (!box.isConnected) return;
    if (pause?.open) {
      later = text;
      return;
    }
    box.querySelector("[data-call-text]").textContent = text;
    if (!box.open) box.showModal();
  }

  outbox.on("say", show);
  pause?.addEventListener("close", () => {
    if (later) show(later);
    later = "";
  });
  box.querySelector("[data-call-seen]").addEventListener("click", () => box.close());
}
