/* What a finger touched is painted first; what follows from it is drawn once, in the task after the next frame. */
export function createAfterPaint() {
  const waiting = new Set();
  return what => {
    if (waiting.has(what)) return;
    waiting.add(what);
    const run = () => {
      waiting.delete(what);
      what();
    };
    if (document.hidden) setTimeout(run, 0);
    else requestAnimationFrame(() => setTimeout(run, 0));
  };
}

/* Many reasons to draw, one drawing, before the next frame. */
export function oncePerFrame(draw) {
  let planned = false;
  return () => {
    if (planned) return;
    planned = true;
    requestAnimationFrame(() => {
      planned = false;
      draw();
    });
  };
}
