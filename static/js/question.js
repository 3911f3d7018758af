/* One question with two ways on; the first is the one most children want.
   Expects dialog[data-ask-box] with [data-ask-title], [data-go] and [data-anyway]. */
export function createQuestion(box) {
  const title = box.querySelector("[data-ask-title]");
  const go = box.querySelector("[data-go]");
  const anyway = box.querySelector("[data-anyway]");
  let answers = {};

  const answer = name => () => {
    box.close();
    answers[name]();
  };
  go.addEventListener("click", answer("onGo"));
  anyway.addEventListener("click", answer("onAnyway"));

  return question => {
    answers = question;
    title.textContent = question.title;
    go.textContent = question.go;
    anyway.textContent = question.anyway;
    box.showModal();
  };
}
