/* Tells the laptop what reads aloud on this tablet, so that the teacher sees where nothing does: "local", "recorded"
   or "none". Said when the voices have had time to come, and again when it changes. */
import { whenVoice } from "./speech.js";

const SETTLED = 4000, AGAIN = 30000;

/* @param recorded whether the teacher recorded every problem of this sitting */
export function reportVoice({ sitting, key, language, recorded }) {
  let local = false, said = null, timer = 0;

  async function report() {
    const voice = local ? "local" : recorded ? "recorded" : "none";
    if (voice === said) return;
    try {
      const response = await fetch("/voice", { method: "POST", credentials: "omit", redirect: "error",
        cache: "no-store", headers: { "Content-Type": "application/json" },
        body: JSON.stringify({ sitting, key, voice }) });
      if ((await response.json())?.fewermore === 1) said = voice;
    } catch (unreachable) {
      plan(AGAIN);
    }
  }

  function plan(millis) {
    clearTimeout(timer);
    timer = setTimeout(report, millis);
  }

  whenVoice(language, there => {
    if (there === local && timer) return;
    local = there;
    plan(SETTLED);
  });
}
