import type { Theme } from '../theme/theme.js';

/**
 * The style of a handout: one column as wide as paper between margins; figures are never broken over
 * pages, nor a heading left alone. Both A4 and Letter hold 680 pixels between margins of 12 mm.
 */
export function handoutStyle({ font, ink, paper, faint, rule, textSize }: Theme): string {
  return `
@page { margin: 12mm; }
html { color: ${ink}; background: ${paper}; font-family: ${font}; font-size: ${textSize}px; }
body { margin: 0; }
main { box-sizing: border-box; max-width: 720px; margin: 0 auto; padding: 16px; }
h1 { font-size: 1.6em; margin: 0 0 0.4em; }
h2 { font-size: 1.2em; margin: 1.2em 0 0.4em; break-after: avoid; }
dl { display: flex; flex-wrap: wrap; gap: 0.3em 1.5em; margin: 0; padding: 0.5em 0;
  border-top: 1px solid ${rule}; border-bottom: 1px solid ${rule}; }
dt { color: ${faint}; font-size: 0.85em; }
dd { margin: 0; font-weight: bold; }
figure { margin: 0.4em 0; break-inside: avoid; }
svg { display: block; width: 100%; height: auto; }
.narrow { display: none; }
@media screen and (max-width: 540px) {
  main { padding: 8px; }
  .wide { display: none; }
  .narrow { display: block; }
  figure { overflow-x: auto; }
  figure[tabindex] svg { min-width: 680px; }
}
/* Staff notation is black, whatever the theme. */
.staff { background: #ffffff; }
.staff > svg { break-inside: avoid; }
p { max-width: 40em; line-height: 1.5; }
h2 + p { break-after: avoid; }
@media print { main { padding: 0; max-width: none; } }
`;
}
