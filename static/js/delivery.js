/* How the work stands: one of five sentences, each with its shape. Expects <template data-delivery="…">. */
const CLASSES = { theirs: "theirs", seen: "theirs", kept: "kept", keep: "keep", show: "keep" };

export function createDelivery(root) {
  const templates = Object.fromEntries([...root.querySelectorAll("template[data-delivery]")]
    .map(template => [template.dataset.delivery, template.content]));

  /* @param standing as outbox.standing says, or "" for nothing */
  function draw(line, standing, handedIn) {
    const name = { "": "", there: handedIn ? "theirs" : "seen", kept: "kept", later: "kept", keep: "keep",
      show: "show" }[standing];
    const now = `${name} ${standing}`;
    if (line.dataset.now === now) return;
    line.dataset.now = now;
    line.className = `delivery ${CLASSES[name] ?? ""}`.trim();
    line.replaceChildren();
    if (!name) return;
    line.append(templates[name].cloneNode(true));
    const later = line.querySelector("[data-later]");
    if (later) later.hidden = standing !== "later";
  }

  return { draw };
}
