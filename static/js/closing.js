/* The end of a sitting on this page: by "I'm done", by the next child, by the teacher. All of the child's work and
   the name leave the page at once; what waits for the Wi-Fi stays in the outbox and goes on being sent.
   No page is fetched before the laptop has answered. Expects <template data-closed> and form[data-leave]. */
import * as outbox from "./outbox.js";
import { showWaiting } from "./waiting.js";

const BEAT = 15000, SPREAD = 3000, KNOCK = 3000, PATIENCE = 4000;

/* @param sitting this page's own
   @param anyWork() id of a work of this sitting, or undefined */
export function createClosing(sitting, anyWork) {
  const state = { closed: false, gone: false };
  const template = document.querySelector("[data-closed]");
  const leaveForm = document.querySelector("form[data-leave]");

  function close() {
    if (state.closed) return;
    state.closed = true;
    leaveForm.hidden = true;
    document.querySelectorAll("dialog[open]").forEach(dialog => dialog.close());
    document.body.replaceChildren(...[document.querySelector(".sprite"), template.content.cloneNode(true)].filter(Boolean));
    document.title = document.querySelector(".closed h1").textContent;
    history.replaceState(null, "", "#");
    draw();
    outbox.on("change", draw);
    document.querySelector(".closed h1").focus();
  }

  function draw() {
    showWaiting(document);
    const keep = document.querySelector("[data-keep]");
    if (keep) keep.hidden = !outbox.onlyHere();
  }

  /* "I'm done": a good-bye goes with the work, then Come in opens as soon as the laptop answers. */
  function leave() {
    if (state.closed) return;
    const work = anyWork();
    if (work) outbox.leave(work);
    close();
    document.querySelector("[data-come-in]").addEventListener("click", event => {
      event.preventDefault();
      knock();
    });
    const since = Date.now();
    const tryIt = () => knock(since);
    outbox.on("change", () => {
      if (outbox.empty()) tryIt();
    });
    tryIt();
    setInterval(tryIt, KNOCK);
  }

  /* Opens Come in once the laptop answers: it has the good-bye, or is told by the form. */
  async function knock(since = 0) {
    if (state.gone || outbox.onlyHere() || await outbox.pulse() === null || state.gone) {
      outbox.sendNow();
      return;
    }
    if (outbox.empty() && anyWork()) {
      state.gone = true;
      location.assign("/come-in");
    } else if (Date.now() - since > PATIENCE || !anyWork()) {
      state.gone = true;
      document.body.append(leaveForm);
      leaveForm.submit();
    }
  }

  /* ---- what the tablet hears of others ---- */

  addEventListener("storage", event => {
    if (event.key?.startsWith("fw.s.") && outbox.someoneElseCameIn()) close();
  });
  ["pageshow", "focus"].forEach(name => addEventListener(name, () => {
    if (outbox.someoneElseCameIn()) close();
  }));
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible" && outbox.someoneElseCameIn()) close();
  });

  async function check() {
    const reply = state.closed ? null : await outbox.pulse();
    if (reply && (reply.sitting === "ended" || (reply.id && reply.id !== sitting))) close();
  }

  function beat() {
    setTimeout(() => {
      if (document.visibilityState === "visible") check();
      beat();
    }, BEAT + (Math.random() * 2 - 1) * SPREAD);
  }
  beat();
  addEventListener("pageshow", event => {
    if (event.persisted) check();
  });

  return { close, leave, get closed() { return state.closed; } };
}
