import { FORMS } from '@reedplate/form';
import { unsupportedIn, writePiece } from '@reedplate/interchange';
import { makeHarp, TECHNIQUE_LEVELS, TUNINGS, type TuningId } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { TWELVE_KEYS } from '@reedplate/pitch';
import { pathInPart } from '@reedplate/playability';
import { PRACTICE_KINDS } from '@reedplate/practice';
import { formatTab, markOf } from '@reedplate/tab';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { complaintsOfPractice } from './playable/complaints-of-practice.js';
import { complaintOf } from './playable/tab-complaint.js';
import { TAB_FORMATS, tabInFile } from './playable/tab-in-files.js';

// A busy machine takes its time over hundreds of files.
vi.setConfig({ testTimeout: 120_000 });

const anyCase = fc.record({
  tonic: fc.constantFrom(...TWELVE_KEYS.map(({ tonic }) => tonic)),
  form: fc.constantFrom(...FORMS),
  kind: fc.constantFrom(...PRACTICE_KINDS),
  level: fc.constantFrom(...TECHNIQUE_LEVELS),
});

describe('files of practice lines', () => {
  // scripts/playable-files.ts goes through all of them.
  test('hold the tab of the screen, which can be played, for any key, form, kind and level', () => {
    fc.assert(
      fc.property(anyCase, (asked) => {
        expect(complaintsOfPractice({ ...asked, tuning: 'standard' })).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('hold it on any tuning that has the line', () => {
    let found = 0;
    fc.assert(
      fc.property(
        anyCase,
        fc.constantFrom(...TUNINGS.map(({ id }) => id as TuningId)),
        (asked, tuning) => {
          const complaints = complaintsOfPractice({ ...asked, tuning });
          if (complaints === 'none') return;
          found += 1;
          expect(complaints).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
    expect(found).toBeGreaterThan(10);
  });
});

describe('files of any line', () => {
  const anyLine = fc
    .array(fc.uniqueArray(fc.integer({ min: 60, max: 96 }), { minLength: 1, maxLength: 3 }), {
      minLength: 1,
      maxLength: 10,
    })
    .map((chords) =>
      makeLine(
        chords.flatMap((pitches, at) =>
          pitches.map((pitch) => ({ start: at * 960, duration: 960, pitch })),
        ),
      ),
    );

  test('hold the tab of the easiest path, or say which notes cannot be struck together', () => {
    fc.assert(
      fc.property(anyLine, fc.constantFrom('C', 'A', 'F'), (line, key) => {
        const harp = makeHarp(key);
        const { soundings, missing } = pathInPart(line, harp, { level: 'overbends' });
        const isLacked = missing.some(({ obstacle }) => obstacle !== 'no-grip');
        const path = soundings.map((grip) => formatTab([grip.map(markOf)]));
        for (const format of TAB_FORMATS) {
          const write = () => writePiece({ line }, format, { harp, level: 'overbends' }) as string;
          if (isLacked) {
            expect(write).toThrow(/note of this harp/u);
            continue;
          }
          const words = tabInFile(write(), format);
          const apart = unsupportedIn({ line }, format, { harp, level: 'overbends' });
          expect(apart.find(({ code }) => code === 'notes-apart')?.count ?? 0).toBe(missing.length);
          const together = words.filter((_, at) => soundings[at]?.length !== 0);
          expect(together).toEqual(path.filter((_, at) => soundings[at]?.length !== 0));
          expect(together.flatMap((word) => complaintOf(word) ?? [])).toEqual([]);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('say so of draw and blow that are struck at once', () => {
    const line = makeLine([65, 72, 76].map((pitch) => ({ start: 0, duration: 960, pitch })));
    const file = writePiece({ line }, 'tab', { harp: makeHarp('C') }) as string;
    expect(tabInFile(file, 'tab').map((word) => complaintOf(word))).toEqual([
      expect.stringMatching(/mixes blow and draw|bends a chord/u),
    ]);
    expect(unsupportedIn({ line }, 'tab', { harp: 'C' })[0]?.code).toBe('notes-apart');
  });
});
