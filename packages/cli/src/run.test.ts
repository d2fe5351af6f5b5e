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
  test.each(VERBS)('runCommand gives %s a help with an example', async (verb) => {
    const { code, out, err } = await runWords([verb, '--help']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(new RegExp(`Examples?:\n  reedplate ${verb} `, 'u'));
    expect(out).toContain('--json');
  });

  test('runCommand without a verb shows the help and fails', async () => {
    const { code, out, err } = await runWords([]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('Usage: reedplate');
  });

  test('runCommand prints the version of the package', async () => {
    expect((await runWords(['--version'])).out).toMatch(/^\d+\.\d+\.\d+\n$/u);
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
    [
      ['chart', '--key', '--form', 'basic'],
      /^reedplate: --key has no value: the next word, --form, is an option itself\n$/u,
    ],
    [['chart', '--form', 'basic', '--key', '-h'], /--key has no value: the next word, -h,/u],
    [['backing', '--key', 'G', '-o', '--json'], /-o has no value: the next word, --json,/u],
    [['recognize', 'G7 |', '--key', '--jsno'], /--key has no value: the next word, --jsno,/u],
    [['handout', '--title', '-o', 'x.html'], /--title has no value: the next word, -o,/u],
    [['chart'], /^reedplate: --key is missing\n/u],
    [['pick', 'G'], /--key is missing: did you mean --key G\?/u],
    [['target', '--key', 'G', 'C'], /--harp is missing: did you mean --harp C\?/u],
    [['map', 'C'], /"C" stands alone: give it as --key C or --harp C/u],
    [
      ['chart', '--key', 'G', '--fomr', 'basic'],
      /unknown option '--fomr' \(Did you mean --form\?\)/u,
    ],
    [['chart', '--key', 'G', 'more'], /too many arguments/u],
    [['target', '--key', 'G', '--harp', 'C', '--level', 'bend'], /did you mean bends\?/u],
    [['practice', '--key', 'G', '--harp', 'C', '--kind', 'root'], /did you mean roots\?/u],
    [['char', '--key', 'G'], /unknown command 'char' \(Did you mean chart\?\)/u],
  ])('runCommand of %j says in one line what is wrong and exits with 2', async (words, message) => {
    const { code, out, err } = await runWords(words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });

  test('runCommand says a defect of our own in one line, without a stack, and exits with 1', async () => {
    const broken = () => {
      throw new TypeError('a defect\nof ours');
    };
    const { code, err } = await runWords(['score', 'take.json', '--key', 'G'], {
      readText: broken,
    });
    expect(code).toBe(1);
    expect(err).toBe(
      'reedplate: this is a fault of reedplate, please report it: TypeError: a defect of ours\n',
    );
  });

  test('runCommand exits with 1 where the machine fails, and says what the system says', async () => {
    const full = () => {
      throw Object.assign(new Error('ENOSPC: no space left on device, write'), { errno: -28 });
    };
    const { code, err } = await runWords(['pick', '--key', 'G'], { out: full });
    expect([code, err]).toEqual([1, 'reedplate: ENOSPC: no space left on device, write\n']);
  });

  test('runCommand exits with 1 where a file cannot be written', async () => {
    const writeBytes = (path: string): void => {
      throw new ReedplateError({
        code: 'FILE_UNWRITABLE',
        value: path,
        expected: 'room on the disk',
      });
    };
    const words = ['practice', '--key', 'G', '--harp', 'C', '-o', 'roots.mid'];
    const { code, err } = await runWords(words, { writeBytes });
    expect([code, err]).toEqual([
      1,
      'reedplate: "roots.mid" cannot be written: expected room on the disk\n',
    ]);
  });

  test('runCommand takes values that begin with dashes where they are no options', async () => {
    const song = ['practice', '--key', 'G', '--harp', 'C'];
    const written: string[] = [];
    const writeBytes = (_: string, bytes: Uint8Array): void => {
      written.push(new TextDecoder().decode(bytes));
    };
    const words = [...song, '--title=--mine', '-o', '-out.abc'];
    expect((await runWords(words, { writeBytes })).code).toBe(0);
    expect(written.join('')).toContain('T:--mine');
    const missing = await runWords(['score', '--key', 'G', '--', '--key', '--form']);
    expect(missing.err).toContain('no file --key');
  });

  test.each(['recognize', 'recognise'])('runCommand reads the spelling %s', async (verb) => {
    const { code, out } = await runWords([verb, 'G7 | C7 | G7 | D7']);
    expect(code).toBe(0);
    expect(out).toMatch(/in G/u);
  });

  test('runCommand reports a file that cannot be read', async () => {
    const readText = (path: string): string => {
      throw new ReedplateError({ code: 'FILE_UNREADABLE', value: path, expected: 'a file' });
    };
    const { code, err } = await runWords(['score', 'gone.json', '--key', 'G'], { readText });
    expect([code, err]).toEqual([2, 'reedplate: "gone.json" cannot be read: expected a file\n']);
  });
});
