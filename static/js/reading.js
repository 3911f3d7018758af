/* Find the question, find what you know: the child taps the sentence, then the numbers, in the story itself. What was
   tapped stands on two cards; a card is tapped to change what is on it. Any sentence and any number can be tapped.
   Expects the [data-for=reading] panel of pages/child/mine.html. */
import { say } from "./texts.js";

export function createReading(panel, context, story) {
  const cards = Object.fromEntries([...panel.querySelectorAll("[data-find]")].map(card => [card.dataset.find, card]));
  const found = Object.fromEntries([...panel.querySelectorAll("[data-found]")].map(each => [each.dataset.found, each]));
  let chosen = "", shown = null;

  Object.entries(cards).forEach(([what, card]) => card.addEventListener("click", () => {
    chosen = what;
    context.redraw();
  }));

  /* What the next tap on the story is for: the card the child chose, else the first that is empty. */
  function finding({ reading }) {
    if (chosen) return chosen;
    return reading.question === "" ? "question" : "known";
  }

  story.onSentence(text => {
    if (context.locked) return;
    chosen = "";
    context.change(({ reading }) => { reading.question = reading.question === text ? "" : text; });
    context.redraw();
  });

  story.onNumber(number => {
    if (context.locked) return;
    context.change(({ reading }) => {
      reading.known = reading.known.includes(number) ? reading.known.filter(each => each !== number)
        : [...reading.known, number];
    });
  });

  function render(problem) {
    if (problem !== shown) {
      shown = problem;
      chosen = "";
    }
    const { reading } = problem.state;
    Object.entries(cards).forEach(([what, card]) => {
      card.setAttribute("aria-pressed", String(!context.locked && finding(problem.state) === what));
      card.disabled = context.locked;
    });
    found.question.textContent = reading.question;
    found.known.replaceChildren(...reading.known.map(number => {
      const chip = document.createElement("span");
      chip.className = "found-number";
      chip.textContent = number;
      return chip;
    }));
    story.point(reading);
  }

  return {
    render,
    /* How the story is to be shown while this part is open. */
    way: problem => (finding(problem.state) === "question" ? "sentences" : "numbers"),
    ask: problem => say(`reading.${finding(problem.state)}`)
  };
}
