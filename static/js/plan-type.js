/* Shows what a typed problem is understood to say, as she types. Expects: <form data-type> with a <textarea name="text">,
   a hidden "roles-of", and <div id="seen">, which POST /plan/look gives anew with piece=yes. Without this script the
   button "Look at it" does the same. */
const form = document.querySelector("form[data-type]");

if (form) {
  const text = form.elements.text, rolesOf = form.elements["roles-of"];
  const PAUSE = 200;
  let timer = 0, asked = 0, shown = 0, touched = 0;

  form.querySelectorAll("[data-without-script]").forEach(each => { each.closest("p").hidden = true; });

  const keep = () => {
    const focused = document.activeElement;
    const seen = document.getElementById("seen");
    if (!seen.contains(focused)) return () => {};
    const { id, value, name } = focused;
    return () => {
      const again = id ? document.getElementById(id)
        : name ? document.querySelector(`#seen [name="${CSS.escape(name)}"][value="${CSS.escape(value)}"]`) : null;
      again?.focus({ preventScroll: true });
    };
  };

  /* Not before she leaves the field she types in. */
  const lookAgain = () => {
    const field = document.activeElement;
    if (field.matches("#seen input") && field.value !== field.defaultValue) field.addEventListener("blur", () => look(), { once: true });
    else look();
  };

  const look = async tap => {
    const turn = ++asked, before = touched;
    const fields = new URLSearchParams(new FormData(form));
    fields.set("piece", "yes");
    if (tap !== undefined) fields.set("tap", tap);
    try {
      const answer = await fetch("/plan/look", { method: "POST", body: fields, redirect: "error" });
      if (!answer.ok || turn < shown) return;
      const fresh = new DOMParser().parseFromString(await answer.text(), "text/html").getElementById("seen");
      if (!fresh || turn < shown) return;
      if (touched !== before) {   /* she went on meanwhile: what she set stays */
        if (turn === asked) lookAgain();
        return;
      }
      shown = turn;
      const open = new Set([...document.querySelectorAll("#seen details[open]")].map(each => each.dataset.keep));
      const back = keep();
      document.getElementById("seen").replaceWith(fresh);
      fresh.querySelectorAll("details[data-keep]").forEach(each => { if (open.has(each.dataset.keep)) each.open = true; });
      rolesOf.value = fields.get("text");
      back();
    } catch { /* the laptop is busy or asleep: the next key tries again */ }
  };

  text.addEventListener("input", () => {
    clearTimeout(timer);
    timer = setTimeout(look, PAUSE);
  });
  form.addEventListener("input", event => {
    if (event.target.closest("#seen")) touched += 1;
  });
  form.addEventListener("change", event => {
    if (event.target.closest("#seen")) look();
  });
  form.addEventListener("click", event => {
    const button = event.target.closest("#seen button");
    if (!button) return;
    event.preventDefault();
    if (button.hasAttribute("data-text")) {
      text.value = button.value;
      look();
    } else {
      look(button.value);
    }
  });
}
