/* One stream of events for a page of the teacher's: openStream("/live", { change: data => … }).
   A browser keeps six connections to a server; a stream holds one for good. So at most four pages of this browser hold
   one at a time, told apart by locks; another asks the page's "poll" every five seconds until a place is free.
   Opened again after 25 s of silence, on coming back to the page, and with growing pauses when refused. */
const SILENCE = 25_000, PLACES = 4, POLL = 5_000, LOOK = 5_000, LOST = 40_000;

export function openStream(address, listeners, { poll = () => undefined, lost = () => undefined } = {}) {
  let stream = null, heard = Date.now(), tried = 0, pause = 1_000, retry = 0, release = null, asking = false, polling = 0;

  const hear = () => { heard = Date.now(); pause = 1_000; lost(false); };

  const connect = () => {
    stream?.close();
    clearTimeout(retry);
    tried = Date.now();
    stream = new EventSource(address);
    stream.addEventListener("beat", hear);
    for (const [name, listener] of Object.entries(listeners)) {
      stream.addEventListener(name, event => { hear(); listener(event.data); });
    }
    stream.addEventListener("error", () => {
      if (stream?.readyState !== EventSource.CLOSED) return;
      retry = setTimeout(open, pause);
      pause = Math.min(30_000, pause * 2);
    });
  };

  const takePlace = async () => {
    if (!navigator.locks) { connect(); return; }
    asking = true;
    for (let place = 0; place < PLACES && !release; place += 1) {
      await new Promise(tried => {
        navigator.locks.request(`fewermore-stream-${place}`, { ifAvailable: true }, lock => {
          if (!lock || document.hidden) { tried(); return undefined; }
          return new Promise(done => { release = done; tried(); });
        });
      });
    }
    asking = false;
    if (release) { clearInterval(polling); polling = 0; connect(); } else if (!polling && !document.hidden) startPolling();
  };

  const startPolling = () => {
    poll();
    polling = setInterval(() => { if (!document.hidden) { poll(); if (!asking && !release) takePlace(); } }, POLL);
  };

  const open = () => {
    if (document.hidden) return;
    if (release || !navigator.locks) connect(); else if (!asking) takePlace();
  };

  const close = () => {
    stream?.close();
    stream = null;
    clearTimeout(retry);
    clearInterval(polling);
    polling = 0;
    release?.();
    release = null;
  };

  setInterval(() => {
    if (document.hidden || !stream) return;
    if (Date.now() - heard > LOST) lost(true);
    if (Date.now() - Math.max(heard, tried) > SILENCE) connect();
  }, LOOK);
  document.addEventListener("visibilitychange", () => (document.hidden ? close() : open()));
  addEventListener("pageshow", event => { if (event.persisted) open(); });
  addEventListener("pagehide", close);
  open();
}
