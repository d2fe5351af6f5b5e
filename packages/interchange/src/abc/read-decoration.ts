import { HIGHEST_MIDI } from '@reedplate/pitch';
import type { WarningList } from '../warning.js';
import { readNotes } from './read-note.js';
import type { MusicToken } from './tokens.js';
import { type AbcJump, addVoiceEvent, type Voice } from './voice.js';

/** What a sign is read with. */
export interface MusicContext {
  readonly voice: Voice;
  readonly line: number;
  readonly warnings: WarningList;
}

/** Signs to jump by: ABC 2.1, decorations, and what writers of files join to them (common practice). */
const JUMPS: ReadonlyMap<string, AbcJump> = new Map([
  ['segno', { kind: 'segno' }],
  ['coda', { kind: 'coda' }],
  ['dacoda', { kind: 'to-coda' }],
  ['fine', { kind: 'fine' }],
  ['dacapo', { kind: 'da-capo' }],
  ['d.c.', { kind: 'da-capo' }],
  ['d.s.', { kind: 'dal-segno' }],
  ['d.c.alfine', { kind: 'da-capo', until: 'fine' }],
  ['d.c.alcoda', { kind: 'da-capo', until: 'coda' }],
  ['d.s.alfine', { kind: 'dal-segno', until: 'fine' }],
  ['d.s.alcoda', { kind: 'dal-segno', until: 'coda' }],
]);

/** `S` and `O` stand for segno and coda: ABC 2.1, redefinable symbols. */
const SHORT_JUMPS: ReadonlyMap<string, AbcJump> = new Map([
  ['S', { kind: 'segno' }],
  ['O', { kind: 'coda' }],
]);

/** Signs of an accent: ABC 2.1, decorations; `L` stands for one. */
const ACCENTS: ReadonlySet<string> = new Set(['accent', '>', 'emphasis']);

const TOGETHER = /\[[^[\]]*\]|[^[\]]+/gu;

/** Grace notes one after another; in brackets some of them together. Their lengths say nothing of time. */
export function readGrace(token: MusicToken, context: MusicContext): void {
  const { voice } = context;
  const parts = token.text.slice(1, -1).match(TOGETHER) ?? [];
  const groups = parts.flatMap((part) => {
    const pitches = readNotes(part, voice).map(({ pitch }) => pitch);
    const inRange = pitches.filter((pitch) => pitch >= 0 && pitch <= HIGHEST_MIDI);
    return part.startsWith('[') ? [inRange] : inRange.map((pitch) => [pitch]);
  });
  const sounding = groups.filter((pitches) => pitches.length > 0);
  if (sounding.length === 0) warn('grace-notes', token, context);
  for (const pitches of sounding) addVoiceEvent(voice, { kind: 'grace', pitches });
}

/** A sign of playing: an accent, a jump, or an ornament, which is left out. */
export function readOrnament(token: MusicToken, context: MusicContext): void {
  const name = /^[!+](.*)[!+]$/u.exec(token.text)?.[1]?.toLowerCase();
  if (name === undefined ? token.text === 'L' : ACCENTS.has(name)) {
    context.voice.accent = true;
    return;
  }
  const jump = name === undefined ? SHORT_JUMPS.get(token.text) : JUMPS.get(name);
  if (jump !== undefined) addVoiceEvent(context.voice, { kind: 'jump', jump });
  else warn('ornaments', token, context);
}

function warn(
  code: 'grace-notes' | 'ornaments',
  { text, column }: MusicToken,
  { line, warnings }: MusicContext,
): void {
  warnings.add(code, { line, column }, text);
}
