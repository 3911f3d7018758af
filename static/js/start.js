/* What each page needs. Expects <body data-page="…">. The outbox runs on every page: work of a sitting that is
   over may still wait on this tablet. */
import * as outbox from "./outbox.js";
import { bindOnce } from "./once.js";
import { showWaiting } from "./waiting.js";
import { bindSpeakers } from "./speech.js";

bindOnce();
bindSpeakers(document);
outbox.run();
outbox.on("change", () => showWaiting(document));
showWaiting(document);

const page = document.body.dataset.page;
if (page === "sitting") {
  import("./sitting.js").then(sitting => sitting.start());
  import("./call.js").then(call => call.start());
} else if (page === "door") {
  import("./door.js").then(door => door.start());
} else if (page === "secret") {
  import("./secret.js").then(secret => secret.start());
} else if (page === "work") {
  import("./too-early.js").then(early => early.start());
} else if (page === "hello") {
  import("./hello.js").then(hello => hello.start());
}
import("./address.js").then(address => address.start());
