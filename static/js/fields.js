/* The parts that are written: equation, answer, estimate, label. Each is a real input with the page's own keys below
   it; a real keyboard types into the same input. */
import { say } from "./texts.js";
import { createField } from "./field.js";
import { drawMini } from "./bars.js";

const SIGNS = /\s*([+−=])\s*/g;

/* One blank on each side of a sign, none elsewhere but where a child put one between other things. */
export function tidyEquation(text) {
  return text.replace(/[-–]/g, "−").replace(/[?_]+/g, "□").replace(SIGNS, " $1 ").replace(/ {2,}/g, " ").trimStart();
}

export function createEquation(panel, context) {
  const mini = panel.querySelector("[data-mini]");
  const field = createField(panel, context, {
    read: problem => problem.state.equation,
    write: (state, text) => { state.equation = text; },
    tidy: tidyEquation
  });
  return {
    render(problem) {
      drawMini(mini, problem);
      field.render(problem);
    },
    ask: () => say("equation.ask")
  };
}

export function createAnswer(panel, context) {
  const field = createField(panel, context, {
    read: problem => problem.state.answer,
    write: (state, text) => { state.answer = text; },
    tidy: text => text.replace(/\s+/g, " ").trimStart()
  });
  return {
    render: field.render,
    ask: problem => problem.sentences.find(sentence => sentence.trim().endsWith("?"))
      ?? problem.sentences[problem.sentences.length - 1]
  };
}

/* About how many: a number, or which side of a number of the story it is on. One takes the place of the other.
   Expects buttons [data-side="bigger"], [data-side="smaller"] too. On the wire a side is "bigger than 52". */
export function createEstimate(panel, context) {
  const sides = [...panel.querySelectorAll("[data-side]")];
  const sent = (side, problem) => `${side} than ${problem.than}`;
  const chosen = problem => sides.find(each => sent(each.dataset.side, problem) === problem.state.estimate);
  const field = createField(panel, context, {
    read: problem => (chosen(problem) ? "" : problem.state.estimate),
    write: (state, text) => { state.estimate = text; },
    tidy: text => text.replace(/\s+/g, " ").trimStart()
  });

  sides.forEach(each => each.addEventListener("click", () => {
    if (context.locked) return;
    const { problem } = context;
    const again = chosen(problem) === each;
    context.change(state => { state.estimate = again ? "" : sent(each.dataset.side, problem); });
  }));

  return {
    render(problem) {
      field.render(problem);
      sides.forEach(each => {
        each.textContent = say(`estimate.${each.dataset.side}`, problem.than);
        each.setAttribute("aria-pressed", String(chosen(problem) === each));
        each.disabled = context.locked;
      });
    },
    ask: () => say("estimate.ask")
  };
}

/* Words of the story can be tapped into the label: a tap adds the word, a tap on a word that is in takes it out. */
export function createLabel(panel, context, story) {
  const number = panel.querySelector("[data-number]");
  let taps = [];                        /* [{at, word}], as long as the label is just these */

  const spelled = () => taps.map(tap => tap.word).join(" ");
  const field = createField(panel, context, {
    read: problem => problem.state.label,
    write: (state, text) => { state.label = text; },
    tidy: text => text.replace(/\s+/g, " ").trimStart()
  });

  story.onWord(button => {
    if (context.locked) return;
    const { at, word } = button.dataset;
    const label = context.problem.state.label.trim();
    if (label !== spelled()) taps = label === "" ? [] : [{ at: "", word: label }];
    if (taps.some(tap => tap.at === at)) taps = taps.filter(tap => tap.at !== at);
    else taps = [...taps, { at, word }];
    context.change(state => { state.label = spelled(); });
  });

  return {
    render(problem) {
      if (problem.state.label.trim() !== spelled()) taps = [];
      number.textContent = problem.state.answer.trim();
      field.render(problem);
      story.press(taps.map(tap => tap.at));
    },
    way: () => "words",
    ask: problem => (problem.state.answer.trim() === "" ? say("label.ask-empty")
      : say("label.ask", problem.state.answer.trim()))
  };
}
