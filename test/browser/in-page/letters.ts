/// <reference lib="dom" />
/** Sent into a page as it stands: it must not reach for anything outside of its own body. */

/** Takes the letters of drawings out of sight, or puts them back; by a sheet of styles that no policy of the page refuses. */
export function showLetters(isShown: boolean): void {
  const hidden = new CSSStyleSheet();
  hidden.replaceSync('svg text, svg tspan { fill: transparent !important }');
  document.adoptedStyleSheets = isShown ? [] : [hidden];
}
