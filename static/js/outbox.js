/* Work on its way to the laptop. Every change is written to this tablet first, then sent as a whole snapshot
   named by work, page and seq; sending it again is harmless. Nothing is deleted before the laptop has said that
   it is on its disk.

   fw.s.<sitting>                        {key, made}        no name, no picture
   fw.d.<sitting>.<work>.<page>          {seq, at, parts}   the latest unsent draft, overwritten
   fw.h.<sitting>.<work>.<page>.<seq>    {at, kind, parts}  a hand-in, a hand up or down, a good-bye; never overwritten
   fw.lease                              {page, until}      which tab is sending now
   fw.to                                 {address}          where the laptop is now, when its address has changed */

const SETTLED = 1500, AT_LATEST = 10000, TIMEOUT = 10000, LEASE = 10000, DAY = 86400000;
const MOST_ITEMS = 20, MOST_BYTES = 60 * 1024, MOST_KEPT = 200, MOST_CHARACTERS = 1000000;
const WAITS = [1, 2, 4, 8, 16, 30];
const REFUSALS = [400, 401, 403, 413, 422];

export const page = random(8);
const own = { sitting: null, key: null };
const seqs = new Map();                 /* work → the last number given here */
const unkept = new Map();               /* what the tablet's storage did not take */
const refused = new Set();
const listeners = { change: [], told: [], ended: [], say: [], answer: [] };
const untold = new Set();               /* hand-ins of which this page waits to hear */

let sending = false, timer = 0, timerAt = Infinity, failures = 0, limit = MOST_ITEMS;
let firstUnsent = 0, trouble = false, heard = "";

function random(bytes) {
  const numbers = crypto.getRandomValues(new Uint8Array(bytes));
  return [...numbers].map(number => number.toString(16).padStart(2, "0")).join("");
}

export function on(name, listener) {
  listeners[name].push(listener);
}

function emit(name, value) {
  listeners[name].forEach(listener => listener(value));
}

/* ---- the tablet's storage; every use of it may throw ---- */

function keys() {
  try {
    return Object.keys(localStorage).filter(key => key.startsWith("fw."));
  } catch (closed) {
    return [];
  }
}

function read(key) {
  if (unkept.has(key)) return JSON.parse(unkept.get(key));
  try {
    return JSON.parse(localStorage.getItem(key));
  } catch (unreadable) {
    return null;
  }
}

function write(key, value) {
  const text = JSON.stringify(value);
  try {
    localStorage.setItem(key, text);
    if (localStorage.getItem(key) === text) {
      unkept.delete(key);
      return true;
    }
  } catch (full) {
    /* falls through: kept in the page alone, and the page says so */
  }
  unkept.set(key, text);
  return false;
}

function remove(key) {
  unkept.delete(key);
  try {
    localStorage.removeItem(key);
  } catch (closed) {
    /* nothing is there to remove */
  }
}

function roomForADraft(key) {
  const all = keys();
  if (all.includes(key)) return true;
  return all.length < MOST_KEPT
    && all.reduce((sum, each) => sum + each.length + (localStorage.getItem(each) ?? "").length, 0) < MOST_CHARACTERS;
}

/* ---- items ---- */

function items() {
  const found = new Set([...keys(), ...unkept.keys()]);
  return [...found].filter(key => key.startsWith("fw.d.") || key.startsWith("fw.h.")).flatMap(key => {
    const [, sort, sitting, work, from, seq] = key.split(".");
    const value = read(key);
    if (!value) return [];
    return [{ key, sort, sitting, work, page: from, seq: sort === "h" ? Number(seq) : value.seq, ...value }];
  });
}

/* The page's own sitting. */
export function open(sitting, key) {
  own.sitting = sitting;
  own.key = key;
  const known = read(`fw.s.${sitting}`);
  write(`fw.s.${sitting}`, { key, made: known?.made ?? Date.now() });
}

/* Whether somebody came in on this tablet after this page's child. */
export function someoneElseCameIn() {
  const mine = read(`fw.s.${own.sitting}`);
  return keys().some(key => key.startsWith("fw.s.") && key !== `fw.s.${own.sitting}`
    && (read(key)?.made ?? 0) > (mine?.made ?? Infinity));
}

function next(work) {
  const seq = (seqs.get(work) ?? 0) + 1;
  seqs.set(work, seq);
  return seq;
}

export function draft(work, parts) {
  const key = `fw.d.${own.sitting}.${work}.${page}`;
  const value = { seq: next(work), at: Date.now(), parts };
  if (roomForADraft(key)) write(key, value);
  else unkept.set(key, JSON.stringify(value));
  emit("change");
  firstUnsent = firstUnsent || Date.now();
  plan(Math.min(SETTLED, firstUnsent + AT_LATEST - Date.now()));
}

/* @returns the name of the hand-in */
export function handIn(work, parts) {
  return add(work, "handed-in", parts);
}

export function help(work) {
  return add(work, "help", undefined);
}

export function handDown(work) {
  return add(work, "hand-down", undefined);
}

/* How the hand on a work stands by what is still on its way: true (up), false (down), or null when nothing is. */
export function handOnItsWay(work) {
  const mine = items().filter(item => item.sitting === own.sitting && item.work === work
    && (item.kind === "help" || item.kind === "hand-down"));
  if (mine.length === 0) return null;
  return mine.reduce((best, item) => (item.at > best.at || (item.at === best.at && item.seq > best.seq) ? item : best))
    .kind === "help";
}

/* A good-bye carries the last number of each work, so that the laptop knows what is still to come. */
export function leave(work) {
  return add(work, "leave", undefined, { last: Object.fromEntries(seqs) });
}

function add(work, kind, parts, more = {}) {
  const seq = next(work);
  write(`fw.h.${own.sitting}.${work}.${page}.${seq}`, { at: Date.now(), kind, parts, ...more });
  if (kind === "handed-in") {
    remove(`fw.d.${own.sitting}.${work}.${page}`);
    untold.add(`${work}.${page}.${seq}`);
  }
  emit("change");
  sendNow();
  return { work, page, seq };
}

/* The newest work of this sitting that the laptop has not said it has: {at, parts, handedIn, name}, or null. */
export function newest(work) {
  const mine = items().filter(item => item.sitting === own.sitting && item.work === work && item.parts);
  if (mine.length === 0) return null;
  const last = mine.reduce((best, item) => (item.at > best.at || (item.at === best.at && item.seq > best.seq) ? item : best));
  return { at: last.at, parts: last.parts, handedIn: last.kind === "handed-in",
    name: { work, page: last.page, seq: last.seq } };
}

/* How a work stands: "there" (nothing waits), "kept", "later" (kept, and the laptop does not answer), "keep" (only
   this page has it), "show" (the laptop refuses it). */
export function standing(work) {
  const mine = items().filter(item => item.sitting === own.sitting && item.work === work);
  if (mine.some(item => unkept.has(item.key))) return "keep";
  if (mine.some(item => refused.has(item.key))) return "show";
  if (mine.length === 0) return "there";
  return trouble || !navigator.onLine ? "later" : "kept";
}

/* How many pieces of work wait on this tablet, whoever's they are. */
export function waiting() {
  return new Set(items().filter(item => item.kind !== "leave").map(item => `${item.sitting}.${item.work}`)).size;
}

/* Whether anything of this sitting is only in this page. */
export function onlyHere() {
  return [...unkept.keys()].some(key => key.startsWith("fw.d.") || key.startsWith("fw.h."));
}

export function empty() {
  return items().every(item => item.sitting !== own.sitting);
}

/* ---- sending ---- */

export function run() {
  addEventListener("online", () => sendNow());
  addEventListener("offline", () => emit("change"));
  addEventListener("pageshow", () => sendNow());
  addEventListener("pagehide", farewell);
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") farewell();
    else sendNow();
  });
  sendNow();
}

/* How often in a row the laptop did not answer. */
export function unanswered() {
  return failures;
}

/* The laptop has another address now. What waits goes there too, without a cookie: each piece carries its own key.
   @param address for example http://192.168.1.57:8420; "" for none */
export function goesTo(address) {
  if (address) write("fw.to", { address });
  else remove("fw.to");
  sendNow();
}

/* Tries the new address and the old one in turn, until one answers. */
function target() {
  const to = failures % 2 === 0 ? read("fw.to")?.address : null;
  return to && to !== location.origin ? to : "";
}

export function sendNow() {
  plan(0);
}

function plan(millis) {
  const at = Date.now() + millis;
  if (timer && timerAt <= at) return;
  clearTimeout(timer);
  timerAt = at;
  timer = setTimeout(() => {
    timer = 0;
    timerAt = Infinity;
    pump();
  }, Math.max(0, millis));
}

function batch() {
  const open = items().filter(item => !refused.has(item.key));
  if (open.length === 0) return null;
  const order = (a, b) => (a.sort === b.sort ? a.at - b.at || a.seq - b.seq : a.sort === "h" ? -1 : 1);
  const sitting = open.sort(order)[0].sitting;
  const key = sitting === own.sitting ? own.key : read(`fw.s.${sitting}`)?.key;
  const chosen = [];
  let bytes = 200;
  for (const item of open.filter(each => each.sitting === sitting)) {
    const size = new TextEncoder().encode(JSON.stringify(item)).length;
    if (chosen.length === limit || (chosen.length > 0 && bytes + size > MOST_BYTES)) break;
    chosen.push(item);
    bytes += size;
  }
  return { sitting, key, items: chosen, waiting: open.length - chosen.length };
}

function body({ sitting, key, items: chosen, waiting: more }) {
  return JSON.stringify({ sitting, key, page, waiting: more, items: chosen.map(item => ({
    work: item.work, page: item.page, seq: item.seq, age: Math.max(0, Date.now() - item.at),
    kind: item.kind ?? "draft", parts: item.parts, last: item.last })) });
}

function lease() {
  const held = read("fw.lease");
  const now = Date.now();
  if (held && held.page !== page && held.until > now && held.until <= now + LEASE) return held.until - now;
  write("fw.lease", { page, until: now + LEASE });
  unkept.delete("fw.lease");
  return 0;
}

async function pump() {
  if (sending) return;
  const bundle = batch();
  if (!bundle) return;
  const held = lease();
  if (held > 0) {
    plan(held + Math.random() * 500);
    return;
  }
  sending = true;
  const to = target();
  const outcome = await post(bundle, to);
  sending = false;
  if (read("fw.lease")?.page === page) remove("fw.lease");
  settle(bundle, outcome, to);
}

async function post(bundle, to) {
  const abort = new AbortController();
  const stop = setTimeout(() => abort.abort(), TIMEOUT);
  try {
    const response = await fetch(`${to}/work`, { method: "POST", body: body(bundle), credentials: "omit",
      redirect: "error", cache: "no-store", headers: { "Content-Type": to ? "text/plain" : "application/json" },
      signal: abort.signal });
    const reply = await response.json().catch(() => null);
    return { status: response.status, reply, after: Number(response.headers.get("Retry-After")) || 0 };
  } catch (unreachable) {
    return { status: 0, reply: null, after: 0 };
  } finally {
    clearTimeout(stop);
  }
}

function settle(bundle, { status, reply, after }, to) {
  if (status === 200 && reply?.fewermore === 1) {
    took(bundle, reply);
  } else if (REFUSALS.includes(status) && reply && !to) {
    refuse(bundle, status);
  } else {
    trouble = true;
    const wait = after || WAITS[Math.min(failures, WAITS.length - 1)] * (0.75 + Math.random() / 2);
    failures += 1;
    plan(wait * 1000);
  }
  emit("change");
}

function took(bundle, reply) {
  trouble = false;
  failures = 0;
  const gone = new Set();
  const sent = item => name => name[0] === item.work && name[1] === item.page && name[2] === item.seq;
  const names = list => (Array.isArray(list) ? list : []);
  for (const item of bundle.items) {
    if (names(reply.took).some(sent(item))) gone.add(item);
    const refusal = names(reply.refused).find(sent(item));
    if (refusal?.[3] === "erased") gone.add(item);
    else if (refusal) refused.add(item.key);
  }
  for (const item of gone) {
    /* a draft may have been written anew while this one was on its way */
    if (item.sort === "h" || read(item.key)?.seq === item.seq) remove(item.key);
  }
  if (gone.size === 0 && names(reply.refused).length === 0) {
    plan(30000);
    return;
  }
  const left = batch();
  firstUnsent = left ? Date.now() : 0;
  if (!left) limit = MOST_ITEMS;
  else if (!timer || left.items[0].sort === "h") plan(0);
  tidy(bundle.sitting, reply.sitting);
  names(reply.told).forEach(tell);
  if (bundle.sitting === own.sitting) {
    emit("answer", reply);
    if (reply.sitting === "ended") emit("ended");
    hear(reply.say);
  }
}

function tell(told) {
  untold.delete(`${told.work}.${told.page}.${told.seq}`);
  emit("told", told);
}

/* What the teacher calls comes with every answer until it is over; a page says it once. */
function hear(call) {
  if (!call?.id || call.id === heard) return;
  heard = call.id;
  emit("say", call.text);
}

function refuse(bundle, status) {
  trouble = false;
  failures = 0;
  if (status === 401 || status === 403 || bundle.items.length === 1) {
    bundle.items.forEach(item => refused.add(item.key));
  } else {
    limit = 1;                          /* one of them is at fault: send them one by one */
  }
  if (batch()) plan(0);
}

/* Forgets the key of a sitting that is over and of which nothing waits. */
function tidy(sitting, state) {
  if (sitting === own.sitting || items().some(item => item.sitting === sitting)) return;
  const made = read(`fw.s.${sitting}`)?.made ?? 0;
  if (state === "ended" || Date.now() - made > DAY) remove(`fw.s.${sitting}`);
}

/* The page may never come back: one try that outlives it. Nothing is deleted because of it. */
function farewell() {
  const bundle = batch();
  if (!bundle) return;
  const text = body(bundle);
  try {
    fetch("/work", { method: "POST", body: text, credentials: "omit", keepalive: true,
      headers: { "Content-Type": "application/json" } }).catch(() => undefined);
  } catch (refusedByBrowser) {
    navigator.sendBeacon("/work", new Blob([text], { type: "text/plain" }));
  }
}

/* ---- is the laptop there? ---- */

/* @returns the laptop's answer, or null when it did not answer as itself */
export async function pulse() {
  const abort = new AbortController();
  const stop = setTimeout(() => abort.abort(), TIMEOUT);
  try {
    const response = await fetch(untold.size > 0 ? "/pulse?untold=1" : "/pulse", { redirect: "error", cache: "no-store", signal: abort.signal });
    const reply = await response.json();
    if (reply?.fewermore !== 1) return null;
    emit("answer", reply);
    if (trouble) sendNow();
    if (Array.isArray(reply.told)) {
      reply.told.filter(told => untold.has(`${told.work}.${told.page}.${told.seq}`)).forEach(tell);
    }
    hear(reply.say);
    return reply;
  } catch (unreachable) {
    return null;
  } finally {
    clearTimeout(stop);
  }
}
