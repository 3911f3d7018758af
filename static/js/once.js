/* A form with data-once is sent once: a second press within 800 ms is a sticky finger. */
export function bindOnce() {
  document.querySelectorAll("form[data-once]").forEach(form => {
    let last = -Infinity;
    form.addEventListener("submit", event => {
      if (event.timeStamp - last < 800) event.preventDefault();
      last = event.timeStamp;
    });
  });
}

/* True when this press comes too soon after the one before to be meant. */
export function tooSoon(gate, event, millis) {
  const soon = event.timeStamp - (gate.last ?? -Infinity) < millis;
  if (!soon) gate.last = event.timeStamp;
  return soon;
}
