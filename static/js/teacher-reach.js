/* Looks every two seconds whether a tablet came, while the page is visible. Expects main[data-reach] with
   [data-reached], and [data-questions] that opens when nothing came for a minute. */
const LOOK = 2_000;
const main = document.querySelector("main[data-reach]");

const look = async () => {
  if (document.hidden) return;
  try {
    const answer = await fetch(location.href, { cache: "no-store", redirect: "error" });
    if (!answer.ok) return;
    const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
    const now = main.querySelector("[data-reached]"), next = fresh.querySelector("[data-reached]");
    if (next && next.innerHTML !== now.innerHTML) now.replaceChildren(...next.childNodes);
    const asks = main.querySelector("[data-questions]"), asksNext = fresh.querySelector("[data-questions]");
    if (asksNext && asksNext.dataset.open !== asks.dataset.open) {
      asks.querySelector("h2").textContent = asksNext.querySelector("h2").textContent;
      if (asksNext.dataset.open) asks.dataset.open = asksNext.dataset.open;
      else delete asks.dataset.open;
    }
  } catch {
    /* the laptop restarts: the next look finds it */
  }
};

setInterval(look, LOOK);
