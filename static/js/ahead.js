/* Fetches what a browser would fetch only when it is first drawn: when the Wi-Fi drops, all of the sitting is here. */
const FONTS = [['16px "Fewermore Box"', "□"], ["400 16px Andika", "a"], ["700 16px Andika", "a"]];
const PICTURES = ["../img/hatch-light.svg"];
const held = [];                        /* a picture nobody holds may be thrown away before it is drawn */

export function fetchAhead() {
  FONTS.forEach(([font, letter]) => document.fonts.load(font, letter).catch(() => undefined));
  PICTURES.forEach(picture => {
    const image = new Image();
    image.src = new URL(picture, import.meta.url).href;
    held.push(image);
  });
}
