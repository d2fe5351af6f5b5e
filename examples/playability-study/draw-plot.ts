import type { BarPlotSpec } from '@reedplate/study';
import { parse, View } from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';

/** Draws a plot as SVG text, with Vega and Vega-Lite, without a screen; its description goes with it. */
export async function drawPlot(spec: BarPlotSpec): Promise<string> {
  // Vega marks the rows of its data; ours are frozen.
  const { spec: whole } = compile(structuredClone(spec) as unknown as TopLevelSpec);
  const view = new View(parse({ ...whole, background: '#ffffff' }), { renderer: 'none' });
  const drawn = await view.toSVG();
  const words = `<title>${escapeText(spec.title.text)}</title><desc>${escapeText(spec.description)}</desc>`;
  return `${drawn.replace(/^<svg ([^>]*)>/u, `<svg role="img" $1>${words}`)}\n`;
}

function escapeText(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
