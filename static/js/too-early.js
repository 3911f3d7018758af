/* A problem tapped before the script of "My problems" was there opens as a plain form. Where script works, and nothing
   is written yet, the tablet goes on to the same problem in the page that holds the sitting. It does so once a problem:
   whoever comes here again stays. Expects links of the list ending in #early, and <body data-number="the problem's number">. */
import { pulse } from "./outbox.js";

export async function start() {
  const { number } = document.body.dataset;
  const form = document.querySelector("form[action^='/mine/']");
  let touched = false;
  form.addEventListener("input", () => { touched = true; });
  if (location.hash !== "#early" || cameBefore(location.pathname) || !(await pulse()) || touched) return;
  location.replace(`/mine#${number}`);
}

function cameBefore(path) {
  const key = `fw-early ${path}`;
  try {
    if (sessionStorage.getItem(key)) return true;
    sessionStorage.setItem(key, "1");
    return sessionStorage.getItem(key) !== "1";
  } catch (closed) {
    return true;
  }
}
