/* Keeps a page as it is now. Expects: <main id="main" data-live="/live"> whose content the same address gives anew.
   The stream says only that something changed; the page then fetches itself and swaps what is inside <main>.
   A tab for which no stream is left asks again every few seconds. */
import { openStream } from "./teacher-stream.js";

const main = document.querySelector("main[data-live]");

if (main) {
  let wanted = false, busy = false;

  const typing = () => main.contains(document.activeElement) && document.activeElement.matches("input, textarea, select");

  const swap = async () => {
    if (busy) { wanted = true; return; }
    busy = true;
    wanted = false;
    let reached = true;
    try {
      const answer = await fetch(location.href, { headers: { Accept: "text/html" }, redirect: "error", cache: "no-store" });
      if (answer.ok) show(new DOMParser().parseFromString(await answer.text(), "text/html"));
    } catch {
      wanted = true;                            /* the laptop sleeps or restarts: the next beat tries again */
      reached = false;
    } finally {
      busy = false;
    }
    if (wanted && reached && !typing()) swap(); /* something changed while this was on its way */
  };

  const show = fresh => {
    const next = fresh.querySelector("main[data-live]");
    if (!next || next.innerHTML === main.innerHTML) return;
    const open = [...main.querySelectorAll("details[data-keep][open]")].map(each => each.dataset.keep);
    const focused = main.contains(document.activeElement) ? document.activeElement : null;
    if (typing()) { wanted = true; return; }    /* never take a field from under someone's hands */
    const where = focused && (focused.id ? `#${focused.id}` : focused.getAttribute("href") && `a[href="${CSS.escape(focused.getAttribute("href"))}"]`);
    const scrolled = [...main.querySelectorAll(".wide")].map(each => each.scrollLeft);
    main.replaceChildren(...next.childNodes);
    open.forEach(name => main.querySelector(`details[data-keep="${name}"]`)?.setAttribute("open", ""));
    main.querySelectorAll(".wide").forEach((each, at) => { each.scrollLeft = scrolled[at] ?? 0; });
    if (where) main.querySelector(where)?.focus({ preventScroll: true });
    document.dispatchEvent(new CustomEvent("fewermore:fresh"));
  };

  openStream(main.dataset.live, { whole: swap, change: swap, beat: () => { if (wanted) swap(); } }, { poll: swap });
}
