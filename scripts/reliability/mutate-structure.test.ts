import { describe, expect, test } from 'vitest';
import { mutateJson, mutateXml } from './mutate-structure.js';
import { makeRandom } from './random.js';
import { SEEDS } from './seeds.js';

const random = makeRandom(7);
const times = Array.from({ length: 200 }, (_, at) => at);

describe('mutateJson', () => {
  test('mutateJson gives JSON, seldom the same', () => {
    const [line] = SEEDS.readLine as readonly string[];
    const changed = times.map(() => mutateJson(line ?? '', random));
    for (const each of changed) expect(() => JSON.parse(each)).not.toThrow();
    expect(changed.filter((each) => each !== line).length).toBeGreaterThan(150);
  });
});

describe('mutateXml', () => {
  test('mutateXml keeps every element closed, and changes nearly every time', () => {
    const xml = SEEDS.readMusicXml?.find((seed) => typeof seed === 'string') ?? '';
    const changed = times.map(() => mutateXml(`${xml}`, random));
    for (const each of changed) {
      const opened = each.match(/<[a-z][^<>/]*>/gu)?.length;
      expect(each.match(/<\/[a-z-]+>/gu)?.length).toBe(opened);
    }
    expect(changed.filter((each) => each !== xml).length).toBeGreaterThan(150);
  });
});
