import { describe, expect, test } from 'vitest';
import { SCALE_TYPES } from './scale-types.js';

describe('SCALE_TYPES', () => {
  const names = SCALE_TYPES.flatMap(([, known]) => known.split(', '));

  test('name no scale twice', () => {
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
  });

  test('are named in small letters, as names are looked up', () => {
    expect(names.filter((name) => name !== name.trim().toLowerCase())).toEqual([]);
  });
});
