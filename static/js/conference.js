/* The conference page shows each sentence as it is typed, and keeps what was typed before it prints.
   Expects: <form data-sentences> with a textarea per sentence, and in the sheet an element data-line="name" for each. */
const form = document.querySelector("form[data-sentences]");

if (form) {
  const kept = new Map([...form.elements].filter(each => each.name).map(each => [each.name, each.value]));
  const changed = () => [...form.elements].some(each => each.name && kept.get(each.name) !== each.value);
  const line = name => document.querySelector(`[data-line="${name}"]`);

  form.addEventListener("input", event => {
    const shown = line(event.target.name);
    if (shown) shown.textContent = event.target.value;
  });

  /* Before the print: what stands on the paper is what is kept. A sentence left empty is the app's again. */
  document.querySelector("[data-print-kept]").addEventListener("click", async () => {
    if (changed()) {
      const answer = await fetch(form.action, { method: "POST", body: new URLSearchParams(new FormData(form)) });
      if (!answer.ok) {
        form.querySelector("button[type=submit]").click();
        return;
      }
      const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
      fresh.querySelectorAll("[data-line]").forEach(each => { line(each.dataset.line).textContent = each.textContent; });
      [...form.elements].filter(each => each.name && each.tagName === "TEXTAREA").forEach(each => {
        const now = fresh.getElementById(each.id);
        if (now) each.value = now.value;
        kept.set(each.name, each.value);
      });
    }
    print();
  });
}
