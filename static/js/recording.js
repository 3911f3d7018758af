/* The teacher's own voice, for a tablet that has none: fetched ahead into memory for the open problem and the next, so
   that it speaks without the Wi-Fi too. Played by Web Audio, which needs no file and no secure page. */

const kept = new Map();                 /* work → bytes */
const fetching = new Set();
let audio = null;

/* @param works ids of the works whose recordings are wanted now
   @param arrived() one more is here */
export function keepRecordings(works, arrived) {
  works.filter(work => !kept.has(work) && !fetching.has(work)).forEach(async work => {
    fetching.add(work);
    try {
      const response = await fetch(`/voice/${work}`, { redirect: "error" });
      if (response.ok && response.headers.get("Content-Type")?.startsWith("audio/")) {
        kept.set(work, await response.arrayBuffer());
        arrived();
      }
    } catch (unreachable) {
      /* asked for again when the problem is opened again */
    } finally {
      fetching.delete(work);
    }
  });
}

export const hasRecording = work => kept.has(work);

/* To be called inside a tap, before any waiting: elsewhere a browser keeps quiet. */
export function wakeAudio() {
  const Audio = window.AudioContext ?? window.webkitAudioContext;
  audio = audio ?? (Audio ? new Audio() : null);
  audio?.resume();
}

/* @param done(spoke) once, at the end
   @returns what stops it */
export function playRecording(work, done) {
  let over = false, source = null;
  const finish = spoke => {
    if (over) return;
    over = true;
    source?.stop();
    done(spoke);
  };
  if (!audio || !kept.has(work)) {
    finish(false);
    return () => undefined;
  }
  audio.decodeAudioData(kept.get(work).slice(0), sound => {
    if (over) return;
    source = audio.createBufferSource();
    source.buffer = sound;
    source.connect(audio.destination);
    source.onended = () => {
      source = null;
      finish(true);
    };
    source.start();
  }, () => finish(false));
  return () => finish(true);
}
