/* The story, one sentence a line. It is shown in one of four ways: "" to read, "words" while the label is open (each
   word can be tapped), "sentences" and "numbers" while the child points at the question and at what is known. */
const WORD = /^([¿¡"“‘(]*)(.*?)([.,;:?!"”’)]*)$/;
const NUMBER = /^\d+$/;

export function createStory(root) {
  const heard = { word: () => undefined, sentence: () => undefined, number: () => undefined };
  let shown = null;

  root.addEventListener("click", event => {
    const word = event.target.closest("[data-word]");
    const number = event.target.closest("[data-number-word]");
    const sentence = event.target.closest("[data-pick]");
    if (word) heard.word(word);
    else if (number) heard.number(number.dataset.numberWord);
    else if (sentence) heard.sentence(sentence.dataset.pick);
  });

  function render(problem, way) {
    const what = `${problem.work} ${way}`;
    if (shown === what) return;
    shown = what;
    root.classList.toggle("tappable", way === "words");
    root.classList.toggle("pointing", way === "sentences" || way === "numbers");
    root.replaceChildren(...problem.sentences.map((text, at) => {
      const line = document.createElement("p");
      line.className = "sentence";
      line.dataset.sentence = String(at);
      line.append(...inWay(way, text, at));
      return line;
    }));
    reachable();
  }

  function inWay(way, text, at) {
    if (way === "words") return words(text, at, "word", () => true);
    if (way === "numbers") return words(text, at, "numberWord", word => NUMBER.test(word));
    if (way !== "sentences") return [text];
    const pick = button("pick");
    pick.dataset.pick = text;
    pick.textContent = text;
    return [pick];
  }

  /* A long story scrolls; then a keyboard must be able to scroll it. */
  function reachable() {
    if (root.scrollHeight > root.clientHeight && getComputedStyle(root).overflowY === "auto") root.tabIndex = 0;
    else root.removeAttribute("tabindex");
  }
  addEventListener("resize", reachable);

  function button(look) {
    const made = document.createElement("button");
    made.type = "button";
    made.className = look;
    made.setAttribute("aria-pressed", "false");
    return made;
  }

  function words(text, sentence, asWhat, tappable) {
    return text.split(" ").flatMap((token, at) => {
      const [, before, word, after] = WORD.exec(token);
      if (!tappable(word)) return [token, " "];
      const tap = button("word");
      const core = document.createElement("span");
      tap.dataset[asWhat] = word;
      tap.dataset.at = `${sentence}.${at}`;
      core.textContent = word;
      tap.append(before, core, after);
      return [tap, " "];
    });
  }

  return {
    render,
    sentence: at => root.querySelector(`[data-sentence="${at}"]`),
    onWord(listener) { heard.word = listener; },
    onSentence(listener) { heard.sentence = listener; },
    onNumber(listener) { heard.number = listener; },
    press(places) {
      root.querySelectorAll("[data-word]").forEach(word =>
        word.setAttribute("aria-pressed", String(places.includes(word.dataset.at))));
    },
    point({ question, known }) {
      root.querySelectorAll("[data-pick]").forEach(line =>
        line.setAttribute("aria-pressed", String(line.dataset.pick === question)));
      root.querySelectorAll("[data-number-word]").forEach(word =>
        word.setAttribute("aria-pressed", String(known.includes(word.dataset.numberWord))));
    }
  };
}
