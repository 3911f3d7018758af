/* What the script says. The texts come with the page, in the child's language; {0} and {1} are filled in. */
let texts = {};

export function learn(more) {
  texts = more;
}

export function say(key, ...values) {
  return (texts[key] ?? "").replace(/\{(\d)\}/g, (whole, at) => String(values[Number(at)] ?? ""));
}
