/* The hand: Ask my teacher. It goes up and down as an item of the outbox, so that both come through a cut of the Wi-Fi.
   It also goes down when the teacher has been there, which the page asks about while a hand is up.
   Expects button[data-hand] with [data-hand-word][data-up]. */
import * as outbox from "./outbox.js";
import { say } from "./texts.js";

const ASK = 15000, SPREAD = 3000, TIMEOUT = 10000, MEANT = 800;

/* @param sitting, key of this page
   @param problems each {work, handUp}
   @param current() the open problem or null
   @param tell(text) says it to who can't see it */
export function createHand(button, { sitting, key, problems, current, tell }) {
  const word = button.querySelector("[data-hand-word]");
  const usual = word.textContent;
  let asking = false, last = -Infinity, taps = 0;

  problems.forEach(problem => { problem.handUp = outbox.handOnItsWay(problem.work) ?? problem.handUp; });

  button.addEventListener("click", event => {
    const problem = current();
    if (!problem || event.timeStamp - last < MEANT) return;
    last = event.timeStamp;
    taps += 1;
    problem.handUp = !problem.handUp;
    if (problem.handUp) outbox.help(problem.work);
    else outbox.handDown(problem.work);
    tell(problem.handUp ? say("hand-up") : say("hand-down"));
    render();
  });

  async function ask() {
    if (asking) return;
    asking = true;
    const before = taps;
    const there = problems.filter(problem => problem.handUp && outbox.standing(problem.work) === "there");
    const body = JSON.stringify({ sitting, key });
    const abort = new AbortController();
    const stop = setTimeout(() => abort.abort(), TIMEOUT);
    try {
      const response = await fetch("/hand", { method: "POST", body, credentials: "omit", redirect: "error",
        cache: "no-store", headers: { "Content-Type": "application/json" }, signal: abort.signal });
      const reply = await response.json();
      if (reply?.fewermore === 1 && Array.isArray(reply.up) && taps === before) heard(there, reply.up);
    } catch (unreachable) {
      /* asked again at the next beat */
    } finally {
      clearTimeout(stop);
      asking = false;
    }
  }

  /* A hand that was still on its way to the laptop when it was asked is up, whatever it says.
     @param there problems whose hand the laptop knew of */
  function heard(there, up) {
    there.filter(problem => !up.includes(problem.work)).forEach(problem => {
      problem.handUp = false;
    });
    render();
  }

  function beat() {
    setTimeout(() => {
      const wanted = problems.some(problem => problem.handUp);
      if (wanted && document.visibilityState === "visible") ask();
      beat();
    }, ASK + (Math.random() * 2 - 1) * SPREAD);
  }
  beat();

  function render() {
    const up = Boolean(current()?.handUp);
    button.setAttribute("aria-pressed", String(up));
    word.textContent = up ? word.dataset.up : usual;
  }

  return { render };
}
