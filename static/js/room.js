/* The room, live. Expects <main data-room="/live/room"> with [data-seat] tiles; the stream tells the whole first, then
   what changed. Words change in place: no tile moves, none is made anew. While the page is seen the laptop stays awake. */
import { openStream } from "./teacher-stream.js";

const room = document.querySelector("main[data-room]");

if (room) {
  const ICONS = { working: "pencil", stuck: "question", waiting: "wait", done: "check", away: "away" };
  const at = name => room.querySelector(`[data-${name}]`);
  const say = (element, text) => { if (element && element.textContent !== text) element.textContent = text; };
  const csrf = room.querySelector("input[name=csrf]").value;

  const seat = tile => {
    const link = room.querySelector(`[data-seat="${tile.id}"]`);
    if (!link) { location.reload(); return; }             /* a child was added to the list */
    link.className = `seat ${tile.status}`;
    link.setAttribute("aria-label", tile.aloud);
    link.querySelector("use").setAttribute("href", `#i-${ICONS[tile.status]}`);
    say(link.querySelector("[data-status]"), tile.status);
    say(link.querySelector("[data-where]"), tile.where);
    say(link.querySelector("[data-tablet]"), tile.tablet);
    say(link.querySelector("[data-note]"), tile.note);
  };

  const made = (name, attributes, ...inside) => {
    const element = document.createElement(name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
    element.append(...inside);
    return element;
  };

  /* The list at the top is made anew only when it is another, so that a button under a finger stays. */
  let listed = "";
  const stuck = (list, more) => {
    const now = JSON.stringify(list);
    say(at("more"), more ? `+ ${more} more` : "");
    if (now === listed) return;
    listed = now;
    const focused = document.activeElement?.closest?.("[data-stuck] li")?.dataset.child;
    at("stuck").replaceChildren(...list.map(each => {
      const button = made("button", { class: "act small-act", type: "submit" }, "I’ve been",
        made("span", { class: "aloud" }, ` with ${each.name}`));
      return made("li", { "data-child": each.id },
        made("a", { href: `/room/child/${each.id}` }, made("b", {}, each.name), made("span", {}, each.why)),
        made("form", { method: "post", action: `/room/child/${each.id}/been` },
          made("input", { type: "hidden", name: "csrf", value: csrf }),
          made("input", { type: "hidden", name: "stay", value: "yes" }), button));
    }));
    if (focused) at("stuck").querySelector(`li[data-child="${focused}"] a`)?.focus({ preventScroll: true });
  };

  const show = data => {
    const news = JSON.parse(data);
    news.seats.forEach(seat);
    say(at("title"), news.title);
    stuck(news.stuck, news.more);
    news.counts.forEach(count => say(room.querySelector(`[data-count="${count.status}"] b`), String(count.many)));
    const stopped = document.querySelector(".not-saved");
    say(stopped.querySelector("b"), news.notSaved ?? "");
    say(stopped.querySelector("span"), news.tryThis);
    stopped.hidden = !news.notSaved;
    const paused = at("paused"), form = at("pause");
    say(paused, news.paused ?? "");
    paused.classList.toggle("off", !news.paused);
    form.action = news.paused ? "/room/go-on" : "/room/pause";
    say(form.querySelector("button"), news.paused ? "Go on" : "Pause all");
  };

  const fetchAnew = async () => {
    const answer = await fetch(location.href, { cache: "no-store" }).catch(() => null);
    if (!answer?.ok) return;
    const next = new DOMParser().parseFromString(await answer.text(), "text/html").querySelector("main[data-room]");
    if (next) next.querySelectorAll("[data-seat]").forEach(fresh => seat({ id: fresh.dataset.seat,
      status: fresh.querySelector("[data-status]").textContent, where: fresh.querySelector("[data-where]").textContent,
      tablet: fresh.querySelector("[data-tablet]").textContent, note: fresh.querySelector("[data-note]").textContent,
      aloud: fresh.getAttribute("aria-label") }));
  };

  openStream(room.dataset.room, { whole: show, change: show },
    { poll: fetchAnew, lost: yes => { at("lost").hidden = !yes; } });

  const minutes = at("send");
  minutes.form.querySelector("button").hidden = true;
  minutes.addEventListener("change", () => minutes.form.submit());

  const stayAwake = () => {
    if (!document.hidden) navigator.wakeLock?.request("screen").catch(() => undefined);
  };
  document.addEventListener("visibilitychange", stayAwake);
  stayAwake();
  room.dataset.ready = "";
}
