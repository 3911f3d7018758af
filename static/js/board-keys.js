/* The Board's keys. Expects: <main data-board>; for slides also data-slides, with <section class="slide"> inside and
   parts that come later marked data-from="<step within the slide>". Without this script all of it shows at once.
   Forward: Space, PageDown, →, N. Back: PageUp, ←, Shift+Space, P. First: Home. Blank: B or "."
   The step stands in the address (?step=), so that F5 comes back to it. Links with data-ask ask once before leaving. */
const board = document.querySelector("[data-board]");

if (board) {
  let step = Number(new URLSearchParams(location.search).get("step")) || 1;

  const slides = () => [...board.querySelectorAll(".slide")];
  const stepsOf = slide => Math.max(1, ...[...slide.querySelectorAll("[data-from]")].map(part => Number(part.dataset.from)));
  const all = () => slides().reduce((sum, slide) => sum + stepsOf(slide), 0);

  const go = to => {
    if (slides().length === 0) return;
    step = Math.min(all(), Math.max(1, to));
    let before = 0;
    slides().forEach(slide => {
      const many = stepsOf(slide), within = step - before;
      slide.classList.toggle("on", within >= 1 && within <= many);
      slide.querySelectorAll("[data-from]").forEach(part => part.classList.toggle("later", Number(part.dataset.from) > within));
      before += many;
    });
    const marks = board.querySelector(".steps");
    if (marks) {
      const now = slides().findIndex(slide => slide.classList.contains("on"));
      marks.replaceChildren(...slides().map((_, at) => {
        const mark = document.createElement("i");
        mark.classList.toggle("now", at === now);
        return mark;
      }));
    }
    const address = new URL(location.href);
    address.searchParams.set("step", step);
    history.replaceState(null, "", address);
  };

  const busy = event => event.target.closest?.("input, textarea, select, button, a, dialog") && (event.key === " " || event.key === "Enter");

  document.addEventListener("keydown", event => {
    if (event.repeat || event.ctrlKey || event.altKey || event.metaKey || document.querySelector("dialog[open]") || busy(event)) return;
    const forward = event.key === "PageDown" || event.key === "ArrowRight" || event.key.toLowerCase() === "n" || (event.key === " " && !event.shiftKey);
    const back = event.key === "PageUp" || event.key === "ArrowLeft" || event.key.toLowerCase() === "p" || (event.key === " " && event.shiftKey);
    if (forward || back) { event.preventDefault(); go(step + (forward ? 1 : -1)); }
    if (event.key === "Home") go(1);
    if (event.key.toLowerCase() === "b" || event.key === ".") document.body.classList.toggle("blank");
  });

  document.addEventListener("click", event => {
    const link = event.target.closest("a[data-ask]");
    if (!link) return;
    event.preventDefault();
    const ask = document.createElement("dialog");
    ask.className = "ask-first";
    const text = document.createElement("p"), form = document.createElement("form");
    text.textContent = link.dataset.ask;
    form.method = "dialog";
    [["Stay on the Board", "stay"], ["It is off: go on", "go"]].forEach(([word, value]) => {
      const button = document.createElement("button");
      button.className = "board-link";
      button.value = value;
      button.textContent = word;
      form.append(button);
    });
    ask.append(text, form);
    ask.addEventListener("close", () => { if (ask.returnValue === "go") location.assign(link.href); ask.remove(); });
    document.body.append(ask);
    ask.showModal();
  });

  document.addEventListener("fewermore:fresh", () => go(step));
  board.dataset.ready = "";
  go(step);
}
