/* Prints the page. Expects: <button data-print>. Without script the browser's own menu does it. */
document.querySelectorAll("[data-print]").forEach(button => button.addEventListener("click", () => print()));
