/* Touch and listen: while the ear is pressed, a touch on anything says its name and does nothing else; a touch on the
   ear ends it. For a child who can't read what a key or a tab says.
   Expects button[hidden][data-listen]. */
import { speakOne, whenVoice } from "./speech.js";
import { say } from "./texts.js";

const THINGS = "button, a, input, [data-sentence], .bar, [data-ask], .delivery, .label-line b";

const nameOf = thing => {
  if (thing.matches("input")) return `${thing.getAttribute("aria-label")}. ${thing.value}`;
  const named = thing.matches(".bar") ? thing.querySelector(".who") : thing;
  return (named.getAttribute("aria-label") ?? named.textContent).replace(/\s+/g, " ").trim();
};

/* @param language of the page
   @param tell(text) says it to who can't see it */
export function createListening(button, language, tell) {
  let on = false, named = null;

  function turn(to) {
    on = to;
    button.setAttribute("aria-pressed", String(on));
    document.documentElement.classList.toggle("listening", on);
    named?.classList.remove("named");
    if (on) {
      tell(say("listening"));
      speakOne(say("listening"), language);
    }
  }

  whenVoice(language, there => {
    button.hidden = !there;
    if (!there && on) turn(false);
  });
  button.addEventListener("click", () => turn(!on));

  const own = event => !on || button.contains(event.target) || event.target.closest("dialog");

  ["pointerdown", "mousedown", "touchstart"].forEach(name => addEventListener(name, event => {
    if (!own(event)) event.stopPropagation();
  }, true));
  addEventListener("click", event => {
    if (own(event)) return;
    event.preventDefault();
    event.stopPropagation();
    const thing = event.target.closest(THINGS);
    named?.classList.remove("named");
    named = thing;
    if (!thing) return;
    thing.classList.add("named");
    speakOne(nameOf(thing), language);
  }, true);

  return { stop() { if (on) turn(false); } };
}
