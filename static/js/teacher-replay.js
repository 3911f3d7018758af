/* A child's steps one at a time: by the two keys, and by the arrow keys while the replay has the focus. Without script
   all steps stand below one another. Expects [data-replay] with [data-step], [data-replay-keys], [data-back], [data-on],
   [data-at]. */
document.querySelectorAll("[data-replay]").forEach(replay => {
  const steps = [...replay.querySelectorAll("[data-step]")];
  const keys = replay.querySelector("[data-replay-keys]");
  const back = replay.querySelector("[data-back]"), on = replay.querySelector("[data-on]");
  const line = replay.querySelector("[data-at]");
  let at = steps.length - 1;
  if (at < 0) return;

  function show() {
    steps.forEach((step, index) => { step.hidden = index !== at; });
    back.disabled = at === 0;
    on.disabled = at === steps.length - 1;
    line.textContent = `${at + 1} / ${steps.length}`;
  }

  function go(by) {
    at = Math.min(steps.length - 1, Math.max(0, at + by));
    show();
  }

  back.addEventListener("click", () => go(-1));
  on.addEventListener("click", () => go(1));
  replay.tabIndex = 0;
  replay.addEventListener("keydown", event => {
    const by = { ArrowLeft: -1, ArrowRight: 1, Home: -steps.length, End: steps.length }[event.key];
    if (!by) return;
    event.preventDefault();
    go(by);
  });
  keys.hidden = false;
  show();
});
