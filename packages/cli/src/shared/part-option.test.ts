import { Command } from 'commander';
import { describe, expect, test } from 'vitest';
import { readPart, withPart } from './part-option.js';

describe('readPart', () => {
  test.each([
    ['3', 3],
    ['Harp 2', 'Harp 2'],
    ['', ''],
    // A number that no file has is a name, so that it is refused with the parts that there are.
    ['1234567', '1234567'],
    ['-1', '-1'],
  ])('readPart takes %j for %j', (part, taken) => {
    expect(readPart({ part })).toEqual({ part: taken });
  });

  test('readPart asks for no part where none is named', () => {
    expect(readPart({})).toEqual({});
  });
});

describe('withPart', () => {
  test('withPart adds --part with its help', () => {
    const command = withPart(new Command());
    expect(command.helpInformation()).toMatch(/--part <part>/u);
    command.parse(['--part', '2'], { from: 'user' });
    expect(readPart(command.opts())).toEqual({ part: 2 });
  });
});
