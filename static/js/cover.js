/* "Still you?" After ten minutes without a touch the page covers itself; a tap on one's own picture asks the same.
   Expects dialog[data-cover] with [data-still-me] and [data-not-me], and [data-still-you] anywhere. */
const QUIET = 10 * 60 * 1000, LOOK = 5000;

export function createCover(notMe) {
  const cover = document.querySelector("[data-cover]");
  let last = Date.now();

  const touch = () => {
    if (!cover.open) last = Date.now();
  };
  ["pointerdown", "keydown", "input"].forEach(name => addEventListener(name, touch, { capture: true, passive: true }));

  function raise() {
    if (cover.isConnected && !cover.open) cover.showModal();
  }

  function look() {
    if (Date.now() - last >= QUIET) raise();
  }
  setInterval(look, LOOK);
  document.addEventListener("visibilitychange", look);
  addEventListener("pageshow", event => {
    if (event.persisted) raise();
  });

  cover.addEventListener("cancel", event => event.preventDefault());
  cover.querySelector("[data-still-me]").addEventListener("click", () => {
    last = Date.now();
    cover.close();
  });
  cover.querySelector("[data-not-me]").addEventListener("click", () => {
    cover.close();
    notMe();
  });
  document.addEventListener("click", event => {
    if (event.target.closest("[data-still-you]")) raise();
  });
}
