/* One finger moves one thing. A second finger, a palm and a cancelled touch change nothing; what was moved less than
   10 px was a tap. Each drag has its way by taps elsewhere. */
const TAP = 10, PALM = 60, NEAR = 40, PULL = 24;

const usable = event => event.isPrimary && event.button === 0 && Math.max(event.width, event.height) <= PALM;

/* @param may() whether anything may be moved now
   @param what(target) {value, node, …} or null
   @param targets() the places
   @param start() a drag begins
   @param end(what, place or undefined) */
export function createDrag(root, { may, what, targets, start, end }) {
  let held = null, flying = null, over, dragged = false;

  const within = (place, event, margin) => {
    const box = place.getBoundingClientRect();
    return event.clientX >= box.left - margin && event.clientX <= box.right + margin
      && event.clientY >= box.top - margin && event.clientY <= box.bottom + margin;
  };

  const placeAt = event => targets().find(place => within(place, event, 0))
    ?? targets().find(place => within(place, event, NEAR));

  root.addEventListener("pointerdown", event => {
    dragged = false;
    const thing = may() && !held && usable(event) && what(event.target);
    if (!thing) return;
    held = { ...thing, x: event.clientX, y: event.clientY, pointer: event.pointerId };
    thing.node.setPointerCapture(event.pointerId);
  });

  root.addEventListener("pointermove", event => {
    if (!held || event.pointerId !== held.pointer) return;
    if (!flying && Math.hypot(event.clientX - held.x, event.clientY - held.y) < TAP) return;
    if (!flying) lift();
    flying.style.left = `${event.clientX - flying.offsetWidth / 2}px`;
    flying.style.top = `${event.clientY - flying.offsetHeight - 8}px`;
    const under = placeAt(event);
    if (under !== over) {
      over?.classList.remove("wanted");
      under?.classList.add("wanted");
      over = under;
    }
  });

  function lift() {
    start();
    dragged = true;
    flying = document.createElement("span");
    flying.className = "chip flying";
    flying.setAttribute("aria-hidden", "true");
    flying.textContent = held.value;
    document.body.append(flying);
    held.node.classList.add("away");
  }

  function letGo(event) {
    if (!held || event.pointerId !== held.pointer) return;
    const thing = held, wasFlying = flying !== null;
    held = null;
    flying?.remove();
    flying = null;
    over?.classList.remove("wanted");
    over = undefined;
    thing.node.classList.remove("away");
    if (!wasFlying) return;
    if (event.type === "pointerup") end(thing, placeAt(event));
  }

  root.addEventListener("pointerup", letGo);
  root.addEventListener("pointercancel", letGo);
  root.addEventListener("lostpointercapture", letGo);

  return {
    /* Whether the click that now arrives is the end of a drag. */
    justDragged() {
      const was = dragged;
      dragged = false;
      return was;
    }
  };
}

/* Pulling a bar's end to the right or to the left.
   @param end(index, longer) */
export function createPull(bars, { may, end }) {
  let held = null, pulled = false;

  bars.forEach((bar, index) => {
    bar.addEventListener("pointerdown", event => {
      pulled = false;
      if (!may() || held || !usable(event) || event.target.closest("[data-place]")) return;
      held = { index, bar, x: event.clientX, width: bar.offsetWidth, most: bar.parentElement.offsetWidth,
        pointer: event.pointerId };
    });
    bar.addEventListener("pointermove", event => {
      if (!held || event.pointerId !== held.pointer) return;
      const by = event.clientX - held.x;
      if (!pulled && Math.abs(by) < TAP) return;
      if (!pulled) {
        pulled = true;
        bar.setPointerCapture(event.pointerId);
        bar.classList.add("pulled");
      }
      bar.style.width = `${Math.min(held.most, Math.max(160, held.width + by))}px`;
    });
    const letGo = event => {
      if (!held || event.pointerId !== held.pointer) return;
      const by = event.clientX - held.x, was = held;
      held = null;
      was.bar.style.width = "";
      was.bar.classList.remove("pulled");
      if (event.type === "pointerup" && pulled && Math.abs(by) > PULL) end(was.index, by > 0);
    };
    bar.addEventListener("pointerup", letGo);
    bar.addEventListener("pointercancel", letGo);
    bar.addEventListener("lostpointercapture", letGo);
  });

  return {
    justPulled() {
      const was = pulled;
      pulled = false;
      return was;
    }
  };
}
