/* The page's menu: write with the tablet's own keyboard instead of the page's keys.
   Expects button[data-menu], dialog[data-menu-box] with [data-own-keys] and [data-menu-close]. */
export function createMenu(box, changed) {
  const ownKeys = box.querySelector("[data-own-keys]");
  let own = false;

  ownKeys.addEventListener("click", () => {
    own = !own;
    ownKeys.setAttribute("aria-pressed", String(own));
    ownKeys.querySelector(".tick").classList.toggle("fits", own);
    document.documentElement.classList.toggle("own-keys", own);
    changed(own);
  });
  box.querySelector("[data-menu-close]").addEventListener("click", () => box.close());

  return { open: () => box.showModal(), get ownKeys() { return own; } };
}
