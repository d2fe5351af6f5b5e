import { makeChart } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { parsePhrase } from '../phrase/parse-phrase.js';
import { composeLine } from './compose-line.js';
import { learnPhrases } from './learn-phrases.js';

const climb = parsePhrase('-2 -3 -4 -2', { id: 'climb' });

describe('learnPhrases', () => {
  it('learnPhrases counts which degree follows which, a tenth added', () => {
    const { transitions, leaps } = learnPhrases([climb, climb], 'major');
    expect(transitions[0]?.[4]).toBe(2.1);
    expect(transitions[4]?.[7]).toBe(2.1);
    expect(leaps.slice(3, 8)).toEqual([2.1, 2.1, 0.1, 0.1, 2.1]);
  });

  it('learnPhrases leaves out rhythms of chords and the other mode', () => {
    const chords = parsePhrase('(-2-3-4) (-2-3-4)', { kind: 'chord-rhythm' });
    const minor = parsePhrase('-4 -5', { harmony: 'i7', position: 3 });
    expect(learnPhrases([climb, chords, minor], 'major')).toEqual(learnPhrases([climb], 'major'));
    for (const phrases of [[], [chords], [climb]]) {
      expect(() => learnPhrases(phrases, 'minor')).toThrow(
        expect.objectContaining({ code: 'LIST_EMPTY' }),
      );
    }
  });

  it('learnPhrases refuses what are no phrases, and modes there are not', () => {
    expect(() => learnPhrases(['stair'] as never, 'major')).toThrow(
      expect.objectContaining({ code: 'PHRASE_INVALID' }),
    );
    expect(() => learnPhrases([climb], 'dorian' as never)).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });

  it('composeLine keeps what it promises by the manner of a few phrases', () => {
    const chart = makeChart('basic', 'G');
    const model = learnPhrases([climb], 'major');
    const { steps } = composeLine(chart, 'C', { model, seed: 2, level: 'natural' });
    expect(steps.length).toBeGreaterThan(20);
    expect(steps.at(-1)?.degree).not.toBeNull();
  });
});
