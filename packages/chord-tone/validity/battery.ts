import { scoreLine } from '@reedplate/chord-tone';
import { type Given, JUDGEMENTS, type Judgement } from './judgements.js';
import { makeSongs, type Song, type TakeName } from './takes.js';

/** How often a judgement holds. */
export interface Tried {
  readonly judgement: Judgement;
  readonly held: number;
  readonly of: number;
  /** Songs that broke it. */
  readonly broken: readonly string[];
}

/** Share of the trials in which a judgement must hold to be said to. */
export const HOLDS_FROM = 0.9;

/** Tries every judgement on every song. */
export function tryJudgements(songs: readonly Song[] = makeSongs()): readonly Tried[] {
  const readers = songs.map((song) => ({ song, of: readerOf(song) }));
  return JUDGEMENTS.map((judgement) => {
    const broken = readers.filter(({ of }) => !judgement.holds(of)).map(({ song }) => song.name);
    return { judgement, held: songs.length - broken.length, of: songs.length, broken };
  });
}

function readerOf({ chart, takes }: Song): (name: TakeName) => Given {
  const known = new Map<TakeName, Given>();
  return (name) => {
    const before = known.get(name);
    if (before !== undefined) return before;
    const line = takes.get(name);
    if (line === undefined) throw new Error(`no take: ${name}`);
    const { total, feedback } = scoreLine(line, chart);
    const given = { total, codes: feedback.map(({ code }) => code) };
    known.set(name, given);
    return given;
  };
}
