import { EXERCISE_KINDS } from '@reedplate/practice';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const WORDS = ['practice', '--key', 'G', '--harp', 'C', '--kind'];

describe('reedplate practice', () => {
  test.each(EXERCISE_KINDS)(
    'reedplate practice --kind %s says its goal and its tab',
    async (kind) => {
      const { code, out } = await runWords([...WORDS, kind]);
      expect(code).toBe(0);
      expect(out).toMatch(new RegExp(`^${kind} of Basic twelve-bar in G on the C harp$`, 'mu'));
      expect(out).toMatch(/^\S.* \| .*r/mu);
    },
  );

  test('reedplate practice --help lists the exercises', async () => {
    const { out } = await runWords(['practice', '--help']);
    expect(out).toContain('bend-drill');
  });
});
