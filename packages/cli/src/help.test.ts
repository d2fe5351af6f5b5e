import { describe, expect, test } from 'vitest';
import { runWords } from './shared/run-words.fixture.js';
import { VERBS as TABLE } from './verb-table.js';

const HELP = (await runWords(['--help'])).out;
const VERBS = [...HELP.matchAll(/^ {2}([a-z]+) {2,}[a-z]/gmu)]
  .map(([, verb = '']) => verb)
  .filter((verb) => verb !== 'help');
const helpOf = async (verb: string) => (await runWords([verb, '--help'])).out;

describe('reedplate --help', () => {
  test('reedplate --help names every verb of the table under five headings', () => {
    expect([...VERBS].sort()).toEqual(TABLE.map(({ name }) => name).sort());
    const headings = [...HELP.matchAll(/^([A-Z][a-z ]+):$/gmu)].map(([, heading]) => heading);
    expect(headings).toEqual([
      'Options',
      'Which harp',
      'The song',
      'To practise',
      'Lines',
      'Tunings',
      'Commands',
      'Examples',
    ]);
  });

  test('reedplate --help shows what to type, and how to go on', () => {
    expect(HELP).toMatch(/\nExamples:\n {2}reedplate pick --key G\n/u);
    expect(HELP).toContain('reedplate help VERB shows the options of a verb');
  });

  test('reedplate help VERB is reedplate VERB --help', async () => {
    for (const verb of VERBS) expect((await runWords(['help', verb])).out).toBe(await helpOf(verb));
  });

  test('no help sets its options wider than a terminal of eighty columns', async () => {
    for (const verb of ['', ...VERBS]) {
      const { out: help } = await runWords([...(verb === '' ? [] : [verb]), '--help'], {
        width: 80,
      });
      const [options = ''] = help.split(/^ {2}-h, --help.*$/mu);
      for (const line of options.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
    }
  });
});

const HELPS = new Map<string, string>();
for (const verb of VERBS) HELPS.set(verb, await helpOf(verb));

describe.each(VERBS)('reedplate %s --help', (verb) => {
  const help = HELPS.get(verb) ?? '';

  test('says what it does in a phrase, without a capital or a full stop', () => {
    const [, phrase = ''] = help.split(/\n\n/u);
    expect(phrase).toMatch(/^[a-z]/u);
    expect(phrase.trimEnd()).not.toMatch(/\.$/u);
  });

  test('says of every option what it is for, with its default as it is typed', () => {
    const options = help.split(/^Examples?:$/mu)[0]?.match(/^ {2}-.*$/gmu) ?? [];
    expect(options.length).toBeGreaterThan(1);
    for (const option of options) expect(option).toMatch(/^ {2}\S.*\S {2,}\S/u);
    expect(help).not.toMatch(/default: (?:"|false)/u);
  });

  test('shows at least one example', () => {
    expect(help).toMatch(new RegExp(`\\nExamples?:\\n {2}reedplate ${verb}(?: |\\n)`, 'u'));
  });
});

/** Options that must read the same wherever they stand, with the verbs that may say more. */
const SHARED: readonly (readonly [string, readonly string[]])[] = [
  ['--form <form>', []],
  ['--vary <names>', []],
  ['--turnaround <id>', []],
  ['--intro <from>', []],
  ['--ending <id>', []],
  ['--metre <metre>', []],
  ['--feel <feel>', []],
  ['--register <register>', []],
  ['--json', ['study']],
  [
    '--key <key>',
    [
      'picture',
      'convert',
      'map',
      'scale',
      'recognise',
      'study',
      'adapt',
      'path',
      'phrases',
      'listen',
    ],
  ],
  ['--tuning <tuning>', ['pick', 'setlist', 'lesson']],
  ['--own <harps>', []],
  ['--model <model>', []],
];

describe.each(SHARED)('the option %s', (option, others) => {
  test('reads the same in every help', () => {
    const told = VERBS.filter((verb) => !others.includes(verb))
      .map((verb) => textOf(HELPS.get(verb) ?? '', option))
      .filter((text) => text !== undefined)
      .map((text) => text.replace(/ \(default: .*\)$/u, ''));
    expect(told.length).toBeGreaterThan(1);
    expect(new Set(told).size).toBe(1);
  });
});

/** What a help says of an option, on one line. */
function textOf(help: string, option: string): string | undefined {
  const [, text] = help.split(`  ${option} `);
  return text
    ?.split(/\n(?: {2}-|\n)/u)[0]
    ?.replaceAll(/\s+/gu, ' ')
    .trim();
}
