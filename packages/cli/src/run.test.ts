import { ReedplateError } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { runWords } from './shared/run-words.fixture.js';

const VERBS = [
  'pick',
  'map',
  'chart',
  'target',
  'practice',
  'score',
  'path',
  'fit',
  'study',
  'convert',
  'backing',
] as const;

describe('runCommand', () => {
  test.each(VERBS)('runCommand gives %s a help with an example', (verb) => {
    const { code, out, err } = runWords([verb, '--help']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(new RegExp(`Examples?:\n  reedplate ${verb} `, 'u'));
    expect(out).toContain('--json');
  });

  test('runCommand without a verb shows the help and fails', () => {
    const { code, out, err } = runWords([]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('Usage: reedplate');
  });

  test('runCommand prints the version of the package', () => {
    expect(runWords(['--version']).out).toMatch(/^\d+\.\d+\.\d+\n$/u);
  });

  test.each([
    [['pick', '--key', 'X'], /"X" is not a key/u],
    [['pick', '--key', 'H'], /did you mean B\?/u],
    [['map', '--harp', 'H'], /did you mean B\?/u],
    [['map', '--harp', 'C', '--position', '13'], /13 .*1 to 12/u],
    [['map', '--harp', 'C', '--position', 'two'], /"two" .*a position/u],
    [['map', '--harp', 'C', '--position', '2', '--key', 'G'], /not both/u],
    [['map', '--harp', 'C', '--tuning', 'standrad'], /did you mean standard\?/u],
    [['map', '--harp', 'C', '--register', 'hihg'], /did you mean high\?/u],
    [['chart', '--key', 'G', '--form', 'quick-chnage'], /did you mean quick-change\?/u],
    [['chart', '--key', 'G', '--vary', 'minro'], /did you mean minor\?/u],
    [['chart', '--key'], /argument missing/u],
    [['chart'], /required option '--key <key>' not specified/u],
    [
      ['chart', '--key', 'G', '--fomr', 'basic'],
      /unknown option '--fomr' \(Did you mean --form\?\)/u,
    ],
    [['chart', '--key', 'G', 'more'], /too many arguments/u],
    [['target', '--key', 'G', '--harp', 'C', '--level', 'bend'], /did you mean bends\?/u],
    [['practice', '--key', 'G', '--harp', 'C', '--kind', 'root'], /did you mean roots\?/u],
    [['char', '--key', 'G'], /unknown command 'char' \(Did you mean chart\?\)/u],
  ])('runCommand of %j says in one line what is wrong and exits with 2', (words, message) => {
    const { code, out, err } = runWords(words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });

  test('runCommand lets a defect of our own through', () => {
    const broken = () => {
      throw new TypeError('a defect');
    };
    expect(() => runWords(['score', 'take.json', '--key', 'G'], { readText: broken })).toThrow(
      TypeError,
    );
  });

  test('runCommand reports a file that cannot be read', () => {
    const readText = (path: string): string => {
      throw new ReedplateError({ code: 'FILE_UNREADABLE', value: path, expected: 'a file' });
    };
    const { code, err } = runWords(['score', 'gone.json', '--key', 'G'], { readText });
    expect([code, err]).toEqual([2, 'reedplate: "gone.json" cannot be read: expected a file\n']);
  });
});
