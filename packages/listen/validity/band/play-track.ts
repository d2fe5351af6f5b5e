import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { makeBacking } from '@reedplate/backing';
import { type Chart, formById, makeChart, makeForm } from '@reedplate/form';
import { type PiecePart, type Sheet, writeMidi } from '@reedplate/interchange';
import { type Line, makeLine, parseMetre, secondsAt, type TimedNote } from '@reedplate/line';
import { type Random, randomFrom, TWELVE_KEYS } from '@reedplate/pitch';
import { renderWave } from '../../../../scripts/lib/render-midi.js';
import { readWav, type Sound } from '../../src/index.js';
import { abcOfBars, midiOfAbc } from './abc-track.js';
import { barsOfTrack } from './bars-of-track.js';
import type { Track, TrueChord, Truth } from './track.js';

const RATE = 22_050;
const FOLDER = process.env.TRACKS ?? '/tmp/reedplate-tracks';
const FONTS = {
  small: '/usr/share/sounds/sf2/TimGM6mb.sf2',
  large: '/usr/share/sounds/sf2/default-GM.sf2',
} as const;

/** The sound of a track, kept on disk once it was made, and what is true of it. */
export function playTrack(track: Track): { readonly sound: Sound; readonly truth: Truth } {
  const { midi, chart, form, countIn } = track.player.startsWith('abc')
    ? byAbc(track)
    : byBacking(track);
  const name = createHash('sha256').update(midi).update(JSON.stringify(track)).digest('hex');
  const path = `${FOLDER}/${name.slice(0, 16)}`;
  if (!existsSync(`${path}.wav`)) {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(`${path}.mid`, midi);
    // Played at another rate than it is heard at, it is higher or lower by their ratio.
    const rate = Math.round((RATE * 440) / track.reference);
    renderWave(`${path}.mid`, `${path}.wav`, { font: FONTS[track.font], rate });
  }
  const { sampleRate, samples } = readWav(readFileSync(`${path}.wav`));
  const stretch = sampleRate / RATE;
  return {
    sound: { sampleRate: RATE, samples },
    truth: truthOf(track, { chart, form, countIn }, stretch),
  };
}

interface Played {
  readonly midi: Uint8Array;
  /** All that is played, count-in and ending too. */
  readonly chart: Chart;
  readonly form: Truth['form'];
  /** Bars counted in before the chart. */
  readonly countIn: number;
}

function chartOf(track: Track): Chart {
  const { metre, feel } = formById(track.form);
  const played =
    track.player === 'waltz'
      ? ({ metre: '3/4', feel: 'straight' } as const)
      : track.player === 'slow-twelve-eight'
        ? ({ metre: '12/8', feel: 'slow-12/8' } as const)
        : { metre, feel };
  const form = makeForm(barsOfTrack(track), { id: 'track', ...played });
  const tonic = TWELVE_KEYS[track.tonic]?.tonic ?? 'C';
  const key = form.mode === 'minor' ? (`${tonic}m` as const) : tonic;
  return makeChart(form, key, { tempo: track.tempo });
}

function byBacking(track: Track): Played {
  const chart = chartOf(track);
  const { player, seed, lead } = track;
  const backing = makeBacking(chart, { groove: player as 'boogie', seed });
  const random = randomFrom(seed + 2);
  const parts = (backing.parts ?? []).map((part) => ({
    ...part,
    line: asPeople(part.line, random),
  }));
  const played = backing.chart as Chart;
  const sheet: Sheet = { ...backing, parts: lead ? [...parts, leadOver(played, random)] : parts };
  const countIn = backing.line.countIn ?? 0;
  return { midi: writeMidi(sheet), chart: played, form: formOf(track), countIn };
}

function byAbc(track: Track): Played {
  const chart = chartOf(track);
  const abc = abcOfBars(chart, track.player as 'abc-stride');
  return { midi: midiOfAbc(abc), chart, form: formOf(track), countIn: 0 };
}

const formOf = ({ plan, form }: Track): Truth['form'] => (plan === 'absent' ? null : form);

/** Milliseconds by which people are early or late. */
const UNSTEADY = 0.01;

function asPeople(line: Line, random: Random): Line {
  const ticks = ((line.tempo ?? 96) / 60) * 960 * UNSTEADY;
  const notes = line.notes.map((note) => {
    const off = Math.round((random() + random() + random() - 1.5) * 1.4 * ticks);
    return { ...note, start: Math.max(0, note.start + off) };
  });
  const { notes: _, ...head } = line;
  return makeLine(
    [...notes].sort((a, b) => a.start - b.start),
    head as object,
  );
}

const BLUES_SCALE = [0, 3, 4, 5, 6, 7, 10] as const;
const HARMONICA = 23;

/** A player of the blues scale, in eighths and rests, without much sense. */
function leadOver({ key, bars, metre, tempo, spans }: Chart, random: Random): PiecePart {
  const tonic = 60 + (spans.find(({ chord }) => chord !== null)?.chord?.tones[0]?.pitchClass ?? 0);
  const notes: TimedNote[] = [];
  let degree = 3;
  for (let at = 8; at < bars * 8 - 8; at += 1) {
    degree = Math.max(0, Math.min(13, degree + Math.round(4 * random() - 2)));
    if (random() < 0.35) continue;
    const pitch = tonic + 12 * Math.floor(degree / 7) + (BLUES_SCALE[degree % 7] as number);
    notes.push({ start: at * 480, duration: 440, pitch, velocity: 95 });
  }
  const head = { metre, ...(tempo === undefined ? {} : { tempo }) };
  return { name: `Lead in ${key}`, program: HARMONICA, line: makeLine(notes, head) };
}

function truthOf(
  track: Track,
  { chart, form, countIn }: Omit<Played, 'midi'>,
  stretch: number,
): Truth {
  const { tempo = 96, spans, key, metre, pickup } = chart;
  const timing = { metre, pickup, tempo };
  const before = countIn * parseMetre(metre).barTicks;
  const second = (tick: number): number => secondsAt(before + tick, timing) * stretch;
  const chords = spans.map(({ start, end, chord }): TrueChord => {
    const third = chord?.tones.find(({ degree }) => degree === '3' || degree === 'b3');
    return {
      start: second(start),
      end: second(end),
      root: chord === null ? null : (chord.tones[0]?.pitchClass ?? 0),
      minor: third?.degree === 'b3',
    };
  });
  const barLines = spans
    .filter(({ beat, chord }) => beat === 1 && chord !== null)
    .map(({ start }) => second(start));
  const semitones = 12 * Math.log2(track.reference / 440);
  const moved = Math.round(semitones);
  const up = (root: number): number => (root + moved + 12) % 12;
  return {
    tempo: tempo / stretch,
    tonic: up(track.tonic),
    minor: key.endsWith('m'),
    cents: 100 * (semitones - moved),
    form,
    barLines,
    chords: chords.map((chord) => ({
      ...chord,
      root: chord.root === null ? null : up(chord.root),
    })),
  };
}
