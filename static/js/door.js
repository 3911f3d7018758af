/* The four pictures of the Board, tapped in order: kept here and sent once, instead of once a tap.
   Expects form[data-door] with input[name=taps], ol.door-taps of four li, button[name=tap] tiles and a[data-again]. */
const LENGTH = 4;

export function start() {
  const form = document.querySelector("form[data-door]");
  const taps = form.querySelector("input[name=taps]");
  const frames = [...form.querySelectorAll(".door-taps li")];
  const empty = document.createElement("li");
  empty.className = "empty";

  form.addEventListener("click", event => {
    const tile = event.target.closest("button[name=tap]");
    if (!tile) return;
    event.preventDefault();
    const tapped = taps.value ? taps.value.split(",") : [];
    if (tapped.length >= LENGTH) return;
    taps.value = [...tapped, tile.value].join(",");
    const frame = frames[tapped.length];
    frame.className = tile.className.replace("tile", "").trim();
    frame.replaceChildren(...[...tile.childNodes].map(node => node.cloneNode(true)));
    if (tapped.length + 1 === LENGTH) form.submit();
  });

  form.querySelector("[data-again]").addEventListener("click", event => {
    event.preventDefault();
    taps.value = "";
    frames.forEach(frame => {
      frame.className = "empty";
      frame.replaceChildren();
    });
  });
}
