import { isReedplateError, parseKey } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { readInFile } from './read-at.js';

describe('readInFile', () => {
  test('readInFile gives what is read', () => {
    expect(readInFile('song.txt', () => 12)).toBe(12);
  });

  test('readInFile adds the file to an error and keeps the rest of it', () => {
    const caught = catchError(() => readInFile('song.txt', () => parseKey('H')));
    expect(isReedplateError(caught)).toBe(true);
    expect(caught).toMatchObject({
      code: 'KEY_UNKNOWN',
      value: 'H',
      nearest: 'B',
      where: { file: 'song.txt' },
    });
  });

  test('readInFile lets a defect of our own through', () => {
    const defect = new TypeError('a defect');
    const broken = () => {
      throw defect;
    };
    expect(catchError(() => readInFile('song.txt', broken))).toBe(defect);
  });
});

function catchError(act: () => unknown): unknown {
  try {
    act();
  } catch (error) {
    return error;
  }
  throw new Error('nothing was thrown');
}
