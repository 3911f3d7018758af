/* The story, one sentence a line. While the label is open each word can be tapped. */
const WORD = /^([¿¡"“‘(]*)(.*?)([.,;:?!"”’)]*)$/;

export function createStory(root) {
  let shown = null, wordTapped = () => undefined;

  root.addEventListener("click", event => {
    const word = event.target.closest("[data-word]");
    if (word) wordTapped(word);
  });

  function render(problem, tappable) {
    const what = `${problem.work} ${tappable}`;
    if (shown === what) return;
    shown = what;
    root.classList.toggle("tappable", tappable);
    root.replaceChildren(...problem.sentences.map((text, at) => {
      const line = document.createElement("p");
      line.className = "sentence";
      line.dataset.sentence = String(at);
      line.append(...(tappable ? words(text, at) : [text]));
      return line;
    }));
    reachable();
  }

  /* A long story scrolls; then a keyboard must be able to scroll it. */
  function reachable() {
    if (root.scrollHeight > root.clientHeight && getComputedStyle(root).overflowY === "auto") root.tabIndex = 0;
    else root.removeAttribute("tabindex");
  }
  addEventListener("resize", reachable);

  function words(text, sentence) {
    return text.split(" ").flatMap((token, at) => {
      const [, before, word, after] = WORD.exec(token);
      const button = document.createElement("button");
      const core = document.createElement("span");
      button.type = "button";
      button.className = "word";
      button.dataset.word = word;
      button.dataset.at = `${sentence}.${at}`;
      button.setAttribute("aria-pressed", "false");
      core.textContent = word;
      button.append(before, core, after);
      return [button, " "];
    });
  }

  return {
    render,
    sentence: at => root.querySelector(`[data-sentence="${at}"]`),
    onWord(listener) { wordTapped = listener; },
    press(places) {
      root.querySelectorAll("[data-word]").forEach(word =>
        word.setAttribute("aria-pressed", String(places.includes(word.dataset.at))));
    }
  };
}
