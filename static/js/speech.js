/* Read aloud by a voice that lives on the tablet: never one of the network, never Spanish with an English voice.
   One utterance a sentence; the sentence being said is marked. Where there is no fitting voice there is no button. */
import { say } from "./texts.js";

const NO_START = 3000, AFTER_CANCEL = 60, ASK_AGAIN = [0, 250, 1000];
const KNOWN = { en: ["Samantha", "Nicky", "Aaron"], es: ["Paulina", "Mónica"] };

const speech = window.speechSynthesis;

export function voiceFor(language) {
  const fits = (speech?.getVoices() ?? []).filter(voice => voice.localService === true
    && voice.lang.replace("_", "-").toLowerCase().split("-")[0] === language && !/espeak/i.test(voice.name));
  return fits.find(voice => KNOWN[language]?.some(name => voice.name.startsWith(name))) ?? fits[0] ?? null;
}

/* Voices come late: asks again a few times, then whenever they change. */
export function whenVoice(language, show) {
  if (!speech) {
    show(false);
    return;
  }
  const look = () => show(voiceFor(language) !== null);
  ASK_AGAIN.forEach(millis => setTimeout(look, millis));
  speech.addEventListener?.("voiceschanged", look);
}

/* @param lines [{text, mark: element or undefined}]
   @param done(spoke) once, at the end; false when no voice started */
function speak(lines, language, done) {
  const voice = voiceFor(language);
  if (!voice) {
    done(false);
    return () => undefined;
  }
  let over = false, started = false, marked = null;
  const mark = element => {
    marked?.classList.remove("read");
    element?.classList.add("read");
    marked = element;
  };
  const finish = spoke => {
    if (over) return;
    over = true;
    clearTimeout(watch);
    mark(null);
    done(spoke);
  };
  const watch = setTimeout(() => {
    if (started) return;
    speech.cancel();
    finish(false);
  }, NO_START);
  const begin = () => lines.forEach((line, at) => {
    const utterance = new SpeechSynthesisUtterance(line.text);
    utterance.voice = voice;
    utterance.lang = voice.lang.replace("_", "-");
    utterance.rate = 0.9;
    utterance.onstart = () => {
      if (over) return;
      started = true;
      mark(line.mark ?? null);
    };
    utterance.onend = () => {
      if (at === lines.length - 1) finish(true);
    };
    utterance.onerror = () => finish(started);
    speech.speak(utterance);
  });
  if (speech.speaking || speech.pending) {
    speech.cancel();
    setTimeout(begin, AFTER_CANCEL);
  } else {
    begin();                            /* inside the tap: elsewhere browsers refuse */
  }
  return () => {
    finish(true);
    speech.cancel();
  };
}

/* One thing said in the middle of other things: what was being said before is broken off. */
export function speakOne(text, language) {
  speak([{ text }], language, () => undefined);
}

/* The button of Show your work: reads, or stops reading. Where the tablet has no voice, or it does not start, the
   teacher's recording speaks; without either there is no button.
   @param recording {has(), wake(), play(done) → stop} of the open problem */
export function createReader(button, language, lines, recording) {
  const word = button.querySelector("[data-read-word]");
  const usual = word.textContent;
  let stop = null;

  function rest() {
    stop = null;
    word.textContent = usual;
  }

  function draw() {
    button.hidden = voiceFor(language) === null && !recording.has();
  }

  whenVoice(language, draw);

  /* @param source(done) → stop
     @param failed() when nothing was heard of it */
  function begin(source, failed) {
    let early = false;
    stop = null;
    const halt = source(spoke => {
      early = true;
      rest();
      if (!spoke) failed();
    });
    if (!early) stop = halt;
  }

  const silent = () => { word.textContent = say("no-voice"); };
  const record = () => {
    word.textContent = say("stop");
    begin(done => recording.play(done), silent);
  };

  button.addEventListener("click", () => {
    if (stop) {
      stop();
      return;
    }
    recording.wake();
    word.textContent = say("stop");
    if (voiceFor(language)) begin(done => speak(lines(), language, done), () => (recording.has() ? record() : silent()));
    else record();
  });

  return { draw, stop: () => stop?.() };
}

/* A speaker that says one thing. Expects button[hidden][data-speak="…"]. */
export function bindSpeakers(root) {
  const language = document.documentElement.lang;
  root.querySelectorAll("[data-speak]").forEach(button => {
    if (!button.dataset.speak) return;
    whenVoice(language, there => {
      button.hidden = !there;
    });
    button.addEventListener("click", () => speak([{ text: button.dataset.speak }], language, () => undefined));
  });
}
