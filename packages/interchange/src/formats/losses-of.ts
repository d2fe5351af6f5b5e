import type { Sheet } from '../piece.js';
import { makeWarningList, type PieceWarning, type PieceWarningCode } from '../warning.js';
import { type PieceFormatId, requireFormat } from './formats.js';

/**
 * What of a sheet a format does not hold, as data; empty where nothing is lost on writing.
 *
 * @throws ReedplateError `FORMAT_UNKNOWN`
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { lossesOf } from '@reedplate/interchange';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 67 }], { title: 'Riff' });
 * lossesOf({ line, key: 'G' }, 'midi'); // => []
 * lossesOf({ line, key: 'G' }, 'tab')[0]?.value; // => 'title, key'
 * ```
 */
export function lossesOf(sheet: Sheet, format: PieceFormatId): readonly PieceWarning[] {
  const losses = makeWarningList();
  const id = requireFormat(format);
  for (const [code, lost] of LOSSES[id](sheet)) {
    for (const _ of lost) losses.add(code, {}, lost.join(', '));
  }
  return losses.all();
}

/** Names of what is lost, by what it is lost for; an empty list loses nothing. */
type Losses = readonly (readonly [PieceWarningCode, readonly string[]])[];

const LOSSES: Readonly<Record<PieceFormatId, (sheet: Sheet) => Losses>> = {
  midi: () => [],
  musicxml: (sheet) => [['percussion-unwritten', percussionOf(sheet)]],
  abc: (sheet) => [['percussion-unwritten', percussionOf(sheet)]],
  line: (sheet) => [...lossesOfOneLine(sheet), ['head-unwritten', named({ key: sheet.key })]],
  tab: (sheet) => [...lossesOfOneLine(sheet), ['head-unwritten', headOf(sheet)]],
};

function percussionOf({ parts = [] }: Sheet): readonly string[] {
  return parts.filter(({ percussion }) => percussion === true).map(({ name }) => name);
}

function lossesOfOneLine({ line, chart, parts = [] }: Sheet): Losses {
  const others = parts.filter((part) => part.line !== line);
  return [
    ['chart-unwritten', chart === undefined ? [] : [chart.form]],
    ['parts-unwritten', others.map(({ name }, at) => name || `part ${at + 1}`)],
  ];
}

/** Metre and pickup are left to the reader of tablature, which takes 4/4 where none is given. */
function headOf({ line, key }: Sheet): readonly string[] {
  const { title, tempo, metre, pickup } = line;
  return named({
    title,
    key,
    tempo,
    metre: metre === '4/4' ? undefined : metre,
    pickup: pickup === 0 ? undefined : pickup,
  });
}

function named(fields: Readonly<Record<string, unknown>>): readonly string[] {
  return Object.entries(fields)
    .filter(([, value]) => value !== undefined)
    .map(([name]) => name);
}
