/* "2 pieces of work wait here for the Wi-Fi." Counts, never names.
   Expects [data-waiting][hidden] holding [data-waiting-text data-one="…" data-many="{0} …"]. */
import * as outbox from "./outbox.js";

export function showWaiting(root) {
  root.querySelectorAll("[data-waiting]").forEach(line => {
    const count = outbox.waiting();
    const text = line.querySelector("[data-waiting-text]");
    line.hidden = count === 0;
    text.textContent = (count === 1 ? text.dataset.one : text.dataset.many).replace("{0}", String(count));
  });
}
