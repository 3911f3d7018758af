/* The whole sitting in one page: which problem and part is open, what each part holds, handing in, what the
   laptop said of it. Moving about needs no network: #2-equation is the equation of the second problem.
   Expects the markup of pages/child/mine.html. */
import * as outbox from "./outbox.js";
import { learn, say } from "./texts.js";
import { blank, fromWire, isEmpty, isFull, toWire, worked } from "./work.js";
import { createStory } from "./story.js";
import { createReading } from "./reading.js";
import { createBars } from "./bars.js";
import { createStrategy } from "./strategy.js";
import { createAnswer, createEquation, createEstimate, createLabel } from "./fields.js";
import { createDelivery } from "./delivery.js";
import { createReader } from "./speech.js";
import { createCover } from "./cover.js";
import { createPause } from "./pause.js";
import { createClosing } from "./closing.js";
import { fetchAhead } from "./ahead.js";
import { createQuestion } from "./question.js";
import { createHand } from "./hand.js";
import { createListening } from "./listen.js";
import { createMenu } from "./menu.js";
import { hasRecording, keepRecordings, playRecording, wakeAudio } from "./recording.js";
import { reportVoice } from "./voice.js";
import { tooSoon } from "./once.js";
import { offerMore } from "./more.js";
import { createAfterPaint } from "./paint.js";

const MOST_UNDO = 300;

export function start() {
  const data = JSON.parse(document.querySelector("[data-sitting]").textContent);
  learn(data.texts);
  outbox.open(data.sitting, data.key);
  fetchAhead();

  const list = document.querySelector("[data-problems]");
  const problems = data.problems.map(load);
  const tell = document.querySelector("[data-tell]");
  const delivery = createDelivery(document);
  const ask = createQuestion(document.querySelector("[data-ask-box]"));
  const closing = createClosing(data.sitting, () => problems[0]?.work);
  createCover(() => closing.leave());
  const ownKeysListeners = [];
  const menu = createMenu(document.querySelector("[data-menu-box]"),
    own => ownKeysListeners.forEach(listener => listener(own)));
  const afterPaint = createAfterPaint();
  const speakToAll = text => { tell.textContent = text; };
  reportVoice({ ...data, recorded: problems.length > 0 && problems.every(problem => problem.recorded) });
  createPause();
  let show = null;                      /* Show your work, made when it is first opened */
  let current = null, openPart = "", drafting = false;

  function load(problem) {
    const waiting = outbox.newest(problem.work);
    const draftAt = problem.draft ? Date.now() - problem.draft.age : -Infinity;
    const newest = waiting && waiting.at >= draftAt ? waiting : problem.draft;
    const state = newest ? fromWire(newest.parts, problem) : blank();
    const loaded = { ...problem, state, past: [], told: problem.told ?? null, handed: null, lastHandIn: null,
      askedBlank: false, own: [] };
    if (newest?.handedIn) {
      loaded.handed = JSON.stringify(toWire(state, problem));
      if (newest === waiting) {
        loaded.told = null;
        loaded.lastHandIn = waiting.name;
      }
    }
    return loaded;
  }

  /* ---- what is so ---- */

  const asItStands = problem => JSON.stringify(toWire(problem.state, problem));
  const isHandedIn = problem => problem.handed !== null && problem.handed === asItStands(problem);
  const signOf = (problem, part) => (isHandedIn(problem) ? problem.told?.signs?.[part] : undefined);
  const allFits = problem => worked(problem).every(part => signOf(problem, part) === "fits");
  const isLocked = problem => isHandedIn(problem) && problem.told !== null
    && (problem.triesLeft <= 0 || allFits(problem));
  const nextProblem = problem => problems.slice(problem.number).concat(problems.slice(0, problem.number - 1))
    .find(each => !isHandedIn(each));

  /* The eye stays until the part itself is changed. */
  function stateOf(problem, part) {
    const sign = problem.told?.signs?.[part];
    const handed = problem.handed ? JSON.parse(problem.handed)[part] : undefined;
    const unchanged = JSON.stringify(handed) === JSON.stringify(toWire(problem.state, problem)[part]);
    if (unchanged && (sign === "look-again" || sign === "fits")) return sign;
    return isEmpty(problem.state, part) ? "none" : "there";
  }

  /* ---- changing ---- */

  const context = {
    /* @param drawn whether the part has drawn the change itself: the rest of the page follows after the next paint */
    change(edit, drawn = false) {
      if (isLocked(current)) return;
      const before = JSON.stringify(current.state);
      edit(current.state);
      if (JSON.stringify(current.state) === before) return;
      current.past.push({ before, part: openPart });
      if (current.past.length > MOST_UNDO) current.past.shift();
      keepDraft();
      if (drawn) afterPaint(refresh);
      else render();
    },
    redraw() { if (current) render(); },
    get problem() { return current; },
    onOwnKeys(listener) { ownKeysListeners.push(listener); },
    get locked() { return isLocked(current); },
    advance() {
      const next = partAfter();
      if (next) go(current.number, next);
      else show.handIn.focus();
    }
  };

  /* What the outbox says of the draft is drawn with the page. */
  function keepDraft() {
    drafting = true;
    outbox.draft(current.work, toWire(current.state, current));
    drafting = false;
  }

  function undo() {
    const last = isLocked(current) ? null : current.past.pop();
    if (!last) return;
    current.state = JSON.parse(last.before);
    keepDraft();
    if (last.part !== openPart) go(current.number, last.part);
    else render();
    tell.textContent = say("undone");
  }

  /* ---- moving about ---- */

  function place() {
    const found = /^#(\d+)(?:-([a-z]+))?$/.exec(location.hash);
    return found ? { problem: problems[Number(found[1]) - 1], part: found[2] } : {};
  }

  function go(number, part) {
    history.replaceState(null, "", `#${number}-${part}`);
    follow();
  }

  function firstPart(problem) {
    if (allFits(problem)) return "fitted";
    return problem.asked.find(part => signOf(problem, part) === "look-again")
      ?? problem.asked.find(part => isEmpty(problem.state, part)) ?? problem.asked[0];
  }

  function partAfter() {
    const { asked, state } = current;
    const order = asked.slice(asked.indexOf(openPart) + 1).concat(asked.slice(0, Math.max(0, asked.indexOf(openPart))));
    return order.find(part => isEmpty(state, part));
  }

  function follow() {
    if (closing.closed) return;
    const { problem, part } = place();
    const moved = problem !== current || (problem && part !== openPart);
    if (!problem) {
      current = null;
      show?.reader.stop();
      show?.listening.stop();
      show?.root.remove();
      list.hidden = false;
      document.title = list.querySelector("h1").textContent;
      renderList();
      if (moved) list.querySelector("h1").focus();
      return;
    }
    show = show ?? makeShow();
    if (problem !== current) {
      show.reader.stop();
      keepRecordings([problem, problems[problem.number]].filter(each => each?.recorded).map(each => each.work),
        () => show.reader.draw());
    }
    current = problem;
    const known = problem.asked.includes(part) || (part === "fitted" && allFits(problem));
    openPart = known ? part : firstPart(problem);
    list.hidden = true;
    if (!show.root.isConnected) list.after(show.root);
    document.title = say("title", problem.number, problems.length);
    render();
    if (moved) {
      scrollTo(0, 0);
      show.panels[openPart].querySelector("[data-ask]").focus({ preventScroll: true });
    }
  }

  /* ---- handing in ---- */

  const pressed = {};
  function handIn(event) {
    if (event && tooSoon(pressed, event, 800)) return;
    const hole = worked(current).find(part => isEmpty(current.state, part));
    if (hole && !current.askedBlank) {
      current.askedBlank = true;
      askAboutBlank(hole);
      return;
    }
    const parts = toWire(current.state, current);
    current.handed = JSON.stringify(parts);
    current.told = null;
    current.lastHandIn = outbox.handIn(current.work, parts);
    tell.textContent = say("handed-in");
    render();
  }

  function askAboutBlank(part) {
    const word = say(`part.${part}`);
    ask({ title: say("blank", word), go: say("go-there", word), anyway: say("anyway"),
      onGo: () => go(current.number, part), onAnyway: () => handIn() });
  }

  /* "I'm done" with a problem that is full but was never handed in: asks once. */
  let askedToHandIn = false;
  function leave() {
    const full = problems.find(problem => !isHandedIn(problem)
      && worked(problem).every(part => !isEmpty(problem.state, part)));
    if (!full || askedToHandIn) {
      closing.leave();
      return;
    }
    askedToHandIn = true;
    ask({ title: say("not-handed-in", full.number), go: say("go-to-problem", full.number), anyway: say("leave-anyway"),
      onGo: () => go(full.number, full.asked[full.asked.length - 1]), onAnyway: () => closing.leave() });
  }

  outbox.on("told", told => {
    const problem = problems.find(each => each.work === told.work);
    const name = problem?.lastHandIn;
    if (!name || name.page !== told.page || name.seq !== told.seq) return;
    const first = problem.told === null;
    problem.told = { signs: told.signs ?? {}, prompts: told.prompts ?? {} };
    problem.triesLeft = told.triesLeft ?? problem.triesLeft;
    if (!first || problem !== current || !isHandedIn(problem)) {
      refresh();
      return;
    }
    tell.textContent = Object.values(problem.told.prompts).join(" ");
    const again = problem.asked.find(part => signOf(problem, part) === "look-again");
    if (allFits(problem)) go(problem.number, "fitted");
    else if (again) go(problem.number, again);
    refresh();
  });

  /* ---- drawing ---- */

  function makeShow() {
    const root = document.querySelector("[data-show]").content.firstElementChild.cloneNode(true);
    const at = selector => root.querySelector(selector);
    const panels = Object.fromEntries([...root.querySelectorAll("[data-for]")].map(each => [each.dataset.for, each]));
    const story = createStory(at("[data-story]"));
    const parts = {
      reading: createReading(panels.reading, context, story),
      bars: createBars(panels.bars, context),
      equation: createEquation(panels.equation, context),
      ...(panels.strategy && { strategy: createStrategy(panels.strategy, context,
        () => go(current.number, partAfter() ?? "answer")) }),
      answer: createAnswer(panels.answer, context),
      label: createLabel(panels.label, context, story),
      estimate: createEstimate(panels.estimate, context)
    };
    const reader = createReader(at("[data-read]"), data.language, () => current.spoken
      .map((text, index) => ({ text, mark: story.sentence(index) }))
      .concat({ text: panels[openPart].querySelector("[data-ask]").textContent.trim() }),
    { has: () => current !== null && hasRecording(current.work), wake: wakeAudio,
      play: done => playRecording(current.work, done) });
    const hand = createHand(at("[data-hand]"), { sitting: data.sitting, key: data.key, problems, current: () => current,
      tell: speakToAll });
    const listening = createListening(at("[data-listen]"), data.language, speakToAll);
    at("[data-menu]").addEventListener("click", () => menu.open());
    at("[data-undo]").addEventListener("click", undo);
    at("[data-hand-in]").addEventListener("click", handIn);
    at("[data-back]").addEventListener("click", event => {
      event.preventDefault();
      history.pushState(null, "", "#");
      follow();
    });
    at("[data-next-part]").addEventListener("click", event => {
      event.preventDefault();
      go(current.number, partAfter());
    });
    root.querySelectorAll("[data-part]").forEach(tab => tab.addEventListener("click", event => {
      event.preventDefault();
      go(current.number, tab.dataset.part);
    }));
    return { root, at, panels, parts, story, reader, hand, listening, handIn: at("[data-hand-in]") };
  }

  function render() {
    const problem = current;
    const { at, panels, parts } = show;
    at("[data-of]").textContent = say("of", problem.number, problems.length);
    show.story.render(problem, isLocked(problem) ? "" : parts[openPart]?.way?.(problem) ?? "");
    renderTabs(problem);
    Object.entries(panels).forEach(([part, panel]) => {
      panel.hidden = part !== openPart;
    });
    panels.fitted.querySelectorAll("[data-fits]").forEach(line => {
      line.hidden = !problem.asked.includes(line.dataset.fits);
    });
    if (openPart !== "fitted") {
      parts[openPart].render(problem);
      renderAsk(problem);
    }
    show.hand.render();
    show.reader.draw();
    show.root.classList.toggle("working", openPart === "strategy");
    show.root.classList.toggle("locked", isLocked(problem));
    at("[data-undo]").disabled = problem.past.length === 0 || isLocked(problem);
    renderFooter(problem);
    renderItem(problem);
  }

  function renderTabs(problem) {
    const tabs = show.root.querySelector(".parts");
    const openAt = problem.asked.indexOf(openPart);
    tabs.dataset.count = String(problem.asked.length);
    tabs.querySelectorAll("[data-part]").forEach(tab => {
      const part = tab.dataset.part, index = problem.asked.indexOf(part);
      tab.hidden = index < 0;
      if (index < 0) return;
      tab.href = `#${problem.number}-${part}`;
      tab.classList.toggle("before-open", index === openAt - 1);
      if (index === openAt) tab.setAttribute("aria-current", "step");
      else tab.removeAttribute("aria-current");
      drawTick(tab, stateOf(problem, part));
    });
  }

  function drawTick(holder, state) {
    const tick = holder.querySelector(".tick");
    tick.className = `tick ${{ none: "", there: "has", "look-again": "again", fits: "fits" }[state]}`.trim();
    tick.querySelector("use").setAttribute("href", state === "look-again" ? "#i-look" : "#i-check");
    holder.querySelector("[data-state-word]").textContent = `, ${say(`state.${state}`)}`;
  }

  function renderAsk(problem) {
    const ask = show.panels[openPart].querySelector("[data-ask]");
    const last = isLocked(problem) && signOf(problem, openPart) === "look-again";
    const prompt = last ? say("no-tries") : problem.told?.prompts?.[openPart];
    ask.classList.toggle("look", Boolean(prompt));
    ask.querySelector("[data-ask-text]").textContent = prompt ?? show.parts[openPart].ask(problem);
  }

  function renderFooter(problem) {
    const { at } = show;
    const handed = isHandedIn(problem);
    const next = handed || openPart === "fitted" || !isFull(problem.state, openPart) ? undefined : partAfter();
    const step = at("[data-next-part]");
    step.hidden = !next;
    if (next) {
      step.href = `#${problem.number}-${next}`;
      step.querySelector("use").setAttribute("href", `#i-${next}`);
      step.querySelector(".aloud").textContent = say("next-part", say(`part.${next}`));
    }
    const button = at("[data-hand-in]");
    const ready = worked(problem).every(part => !isEmpty(problem.state, part));
    const word = button.querySelector("[data-word]");
    word.dataset.first = word.dataset.first ?? word.textContent;
    word.textContent = problem.handed === null && !problem.told ? word.dataset.first : word.dataset.again;
    button.hidden = handed;
    button.classList.toggle("first", ready);
    button.classList.toggle("quiet", !ready);
    const onward = at("[data-next-problem]");
    const after = nextProblem(problem);
    onward.hidden = !handed;
    onward.href = after ? `#${after.number}` : "#";
    const onwardWord = onward.querySelector("[data-word]");
    onwardWord.dataset.first = onwardWord.dataset.first ?? onwardWord.textContent;
    onwardWord.textContent = after ? onwardWord.dataset.first : onwardWord.dataset.last;
    const looking = problem.asked.some(part => signOf(problem, part) === "look-again") && problem.triesLeft > 0;
    onward.classList.toggle("first", !looking);
    onward.classList.toggle("quiet", looking);
    renderDelivery(problem);
  }

  function renderDelivery(problem) {
    const touched = problem.past.length > 0 || problem.handed !== null || problem.draft
      || problem.asked.some(part => !isEmpty(problem.state, part));
    delivery.draw(show.at("[data-delivery-line]"), touched ? outbox.standing(problem.work) : "", isHandedIn(problem));
  }

  function renderItem(problem) {
    const item = list.querySelector(`[data-open="${problem.number}"]`);
    item.href = `#${problem.number}`;
    worked(problem).forEach(part => drawTick(item.querySelector(`[data-pm="${part}"]`), stateOf(problem, part)));
  }

  function renderList() {
    problems.forEach(renderItem);
    offerMore(list, problems.every(isHandedIn));
    const worst = ["keep", "show", "later", "kept"].find(each =>
      problems.some(problem => outbox.standing(problem.work) === each));
    const line = list.querySelector("[data-all-delivery]");
    line.hidden = !worst;
    delivery.draw(line, worst ?? "", true);
  }

  function refresh() {
    if (closing.closed) return;
    if (current) render();
    else renderList();
  }

  /* ---- the tablet ---- */

  outbox.on("change", () => {
    if (closing.closed || drafting) return;
    if (current) renderDelivery(current);
    else renderList();
  });
  outbox.on("ended", () => closing.close());
  outbox.on("say", text => {
    tell.textContent = text;
  });
  document.querySelector("form[data-leave]").addEventListener("submit", event => {
    event.preventDefault();
    leave();
  });
  addEventListener("hashchange", follow);
  follow();
}
