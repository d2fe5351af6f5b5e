import { type Chord, LETTERS, parseNoteName } from '@reedplate/pitch';
import { kindOfSuffix } from './harmony.js';
import { element } from './xml-text.js';

/** A `<harmony>`; a chord that MusicXML has no kind for is `other`, with its suffix as text. */
export function writeHarmony(chord: Chord | null, offset: number): string {
  const placed = offset === 0 ? [] : [element('offset', `${offset}`)];
  if (chord === null) {
    // A root must stand there; it is neither sounded nor shown.
    const root = element('root', [element('root-step', 'C', { text: '' })]);
    const none = element('kind', 'none', { text: 'N.C.' });
    return element('harmony', [root, none, ...placed]);
  }
  const kind = kindOfSuffix(chord.quality);
  return element('harmony', [
    writeStep('root', chord.root),
    element('kind', kind, kind === 'other' || chord.quality !== '' ? { text: chord.quality } : {}),
    ...(chord.bass === undefined ? [] : [writeStep('bass', chord.bass)]),
    ...placed,
  ]);
}

function writeStep(name: 'root' | 'bass', note: string): string {
  const { step, alteration } = parseNoteName(note);
  return element(name, [
    element(`${name}-step`, LETTERS[step]),
    ...(alteration === 0 ? [] : [element(`${name}-alter`, `${alteration}`)]),
  ]);
}
