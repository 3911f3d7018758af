/* Waits until the app that was closed answers again. Expects [data-state] and [data-done][hidden]. */
const ASK_MILLIS = 1000;
const state = document.querySelector("[data-state]");
const done = document.querySelector("[data-done]");
let wasGone = false;

async function ask() {
  try {
    const answer = await fetch("/sign-in", { cache: "no-store", redirect: "follow" });
    if (wasGone && answer.ok) {
      state.textContent = "Fewermore is open again.";
      done.hidden = false;
      done.querySelector("a").focus();
      return;
    }
  } catch {
    wasGone = true;
  }
  setTimeout(ask, ASK_MILLIS);
}

ask();
