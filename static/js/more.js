/* One more problem for a child who has handed in all of hers. Expects <form data-more> on My problems, hidden until then.
   The page goes only when the laptop answers: what waits on the tablet stays on it and is sent from the next page. */
const bound = new WeakSet();

export function offerMore(list, allHandedIn) {
  const form = list.querySelector("[data-more]");
  if (!form) return;
  form.hidden = !allHandedIn;
  if (bound.has(form)) return;
  bound.add(form);
  form.addEventListener("submit", async event => {
    event.preventDefault();
    if (form.dataset.busy) return;
    form.dataset.busy = "yes";
    try {
      const answer = await fetch("/pulse", { cache: "no-store" });
      if (answer.ok) form.submit();
    } catch {
      /* no Wi-Fi: the child stays where she is */
    } finally {
      setTimeout(() => { delete form.dataset.busy; }, 3_000);
    }
  });
}
