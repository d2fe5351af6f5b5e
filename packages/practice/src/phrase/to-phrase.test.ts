import { describe, expect, it } from 'vitest';
import { phraseById } from './to-phrase.js';

describe('phraseById', () => {
  it('phraseById names the nearest phrase, and none where it is given no text', () => {
    expect(() => phraseById('low-seet')).toThrow(
      expect.objectContaining({ code: 'PHRASE_UNKNOWN', value: 'low-seet', nearest: 'low-seat' }),
    );
    expect(() => phraseById(7 as unknown as string)).toThrow(
      expect.objectContaining({ code: 'PHRASE_UNKNOWN', value: 7, nearest: undefined }),
    );
  });
});
