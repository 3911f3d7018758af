/* The one gate. Script switches on in the same browsers in which the style sheets work whole (Safari 15.4,
   Chrome 99, Firefox 98); everywhere older the pages stay plain forms. A half-started page is worse than a form. */
if (window.CSSLayerBlockRule && window.structuredClone && Object.hasOwn) {
  import("./start.js");
}
