import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Beam, beamNotes } from './beam-notes.js';
import { type BarFrame, type SpelledNote, spellVoice } from './spell-voice.js';
import type { BarEvent } from './write-bars.js';

const FOUR_FOUR: BarFrame = { beatTicks: 960, length: 3840 };
const TWELVE_EIGHT: BarFrame = { beatTicks: 1440, length: 5760 };

/** Notes that follow each other, from their lengths; negative ones are rests. */
function spell(frame: BarFrame, lengths: readonly number[]): readonly SpelledNote[] {
  let offset = 0;
  const events = lengths.map((length): BarEvent => {
    const event = {
      offset,
      duration: Math.abs(length),
      pitches: length < 0 ? [] : [67],
      tiedFrom: false,
      tiedTo: false,
    };
    offset += event.duration;
    return event;
  });
  return spellVoice(events, frame);
}

const SIGNS: Readonly<Record<Beam, string>> = {
  begin: '[',
  continue: '-',
  end: ']',
  'forward hook': '>',
  'backward hook': '<',
};

/** The beams of each note as signs, `.` for none. */
function beams(frame: BarFrame, ...lengths: readonly number[]): string {
  return beamNotes(spell(frame, lengths), frame)
    .map((own) => own.map((beam) => SIGNS[beam]).join('') || '.')
    .join(' ');
}

describe('beamNotes', () => {
  test('beamNotes joins eighths within a beat, and no longer notes', () => {
    expect(beams(FOUR_FOUR, 480, 480, 480, 480, 960, 480, 480)).toBe('[ ] [ ] . [ ]');
    expect(beams(TWELVE_EIGHT, 480, 480, 480, 480, 480, 480, 2880)).toBe('[ - ] [ - ] .');
    expect(beams({ beatTicks: 1920, length: 3840 }, 480, 480, 480, 480, 1920)).toBe('[ - - ] .');
  });

  test('beamNotes leaves a lone note, and one beside a rest, its flag', () => {
    expect(beams(FOUR_FOUR, 480, -480, -480, 480, 480, -480, 960)).toBe('. . . . . . .');
  });

  test('beamNotes gives shorter notes more beams, and hooks where a beam has one note', () => {
    expect(beams(FOUR_FOUR, 240, 240, 240, 240)).toBe('[[ -- -- ]]');
    expect(beams(FOUR_FOUR, 720, 240)).toBe('[ ]<');
    expect(beams(FOUR_FOUR, 240, 720)).toBe('[> ]');
    expect(beams(FOUR_FOUR, 240, 480, 240)).toBe('[> - ]<');
    expect(beams(FOUR_FOUR, 480, 240, 120, 120)).toBe('[ -[ --[ ]]]');
  });

  test('beamNotes joins a triplet, and what follows a syncopation', () => {
    expect(beams(FOUR_FOUR, 320, 320, 320, 640, 320)).toBe('[ - ] . .');
    expect(beams(FOUR_FOUR, 480, 960, 480, 1920)).toBe('. . . .');
    expect(beams(FOUR_FOUR, 240, 240, 160, 160, 160)).toBe('[[ ]] [[ -- ]]');
    expect(beams(FOUR_FOUR, ...Array.from({ length: 6 }, () => 160))).toBe('[[ -- ]] [[ -- ]]');
  });

  test('beamNotes counts the beats of a pickup from its end', () => {
    expect(beams({ beatTicks: 960, length: 1440 }, 480, 480, 480)).toBe('. [ ]');
  });

  test('beamNotes gives a note that no value makes none', () => {
    expect(beams(FOUR_FOUR, 480, 479, 480)).toBe('. . .');
  });

  test('beamNotes begins and ends each beam within a beat, for any voice', () => {
    const length = fc.constantFrom(120, 240, 480, 720, 960, 1440, 160, 320, -240, -480);
    const voices = fc.array(length, { maxLength: 24 });
    fc.assert(
      fc.property(voices, fc.constantFrom(960, 1440), (lengths, beatTicks) => {
        const total = lengths.reduce((sum, each) => sum + Math.abs(each), 0);
        const frame = { beatTicks, length: Math.ceil(total / beatTicks) * beatTicks };
        const notes = spell(frame, lengths);
        const all = beamNotes(notes, frame);
        expect(all.length).toBe(notes.length);
        for (const group of [0, 1, 2, 3].flatMap((level) => joined(all, level))) {
          const beats = group.map((at) => Math.floor((notes[at]?.offset ?? -1) / beatTicks));
          expect(new Set(beats).size).toBe(1);
          expect(group.length).toBeGreaterThan(1);
        }
      }),
      { numRuns: 300 },
    );
  });
});

/** Which notes each beam of a level joins; a beam that is not begun or not ended fails the test. */
function joined(all: readonly (readonly Beam[])[], level: number): readonly (readonly number[])[] {
  const groups: number[][] = [];
  let open: number[] | undefined;
  for (const [at, beams] of all.entries()) {
    const beam = beams[level];
    expect(open !== undefined).toBe(beam === 'continue' || beam === 'end');
    if (beam === 'begin') open = [];
    open?.push(at);
    if (beam === 'end' && open !== undefined) groups.push(open);
    if (beam === 'end') open = undefined;
  }
  expect(open).toBeUndefined();
  return groups;
}
