import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { makeTuning, TUNINGS } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { midi } from '@reedplate/pitch';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { runWords } from '../shared/run-words.fixture.js';

const OWN_TUNING = JSON.stringify(makeTuning({ id: 'two-holes', blow: 'C4 E4', draw: 'D4 G4' }));
const withFile = (text: string) => ({ readText: () => text });
const read = (...words: readonly string[]) => runWords(words);

async function readJson(...words: readonly string[]) {
  const { out, err, code } = await read(...words, '--json');
  expect([err, code]).toEqual(['', 0]);
  return JSON.parse(out);
}

describe('reedplate map', () => {
  test('map without --harp takes the harp labelled by the key', async () => {
    const { harp, key } = await readJson('map', '--tuning', 'natural-minor', '--key', 'Am');
    expect(harp).toBe('Am natural-minor');
    expect(key).toBe('Am');
  });

  test('map spells a raised fifth draw reed as a sharp', async () => {
    const { out } = await read('map', '--harp', 'C', '--tuning', 'raised-fifth-draw');
    expect(out).toMatch(/\ndraw +D4 +G4 +B4 +D5 +F#5 /u);
  });

  test('map shows every bend, however deep, and only rows that have a note', async () => {
    const { out } = await read('map', '--harp', 'C', '--tuning', 'extended-top-twelve');
    expect(out).toMatch(/\nblow '''' .*C7 +Eb7\n/u);
    expect(out).not.toContain("draw ''''");
    expect(out).not.toContain('valved');
  });

  test('map says what shades, and what is hardly playable', async () => {
    const { out } = await read('map', '--harp', 'C', '--tuning', 'extended-fourteen');
    expect(out).toMatch(/\n8 draw and 10 blow shade down by about 50 cents, 90 at most/u);
    expect(out).toContain(
      '14 blow bends 4 semitones by the rule; hardly anyone plays the deepest.',
    );
    const solo = await read('map', '--harp', 'C', '--tuning', 'diminished');
    expect(solo.out).not.toContain('shade');
  });

  test('map --valved shows valved bends in place of overbends', async () => {
    const { out } = await read('map', '--harp', 'C', '--valved');
    expect(out).toMatch(/\nblow valved ' +B3 +Eb4 /u);
    expect(out).toMatch(/\ndraw valved '' +A5 /u);
    expect(out).not.toMatch(/^over(?:blow|draw)/mu);
  });

  test('map reads a tuning of one’s own from a file', async () => {
    const words = ['map', '--harp', 'D', '--tuning', 'mine.json'];
    const { out, code } = await runWords(words, withFile(OWN_TUNING));
    expect(code).toBe(0);
    expect(out).toMatch(/^D harp \(two-holes\)\n/u);
    expect(out).toMatch(/\nblow +D4 +F#4\n/u);
  });
});

describe('reedplate pick', () => {
  test('pick --own ranks the harps owned and no others', async () => {
    const picks = await readJson('pick', '--key', 'A', '--own', 'C, D, A', '--level', 'bends');
    expect(picks.map(({ harp }: { harp: string }) => harp)).toEqual(['D', 'A', 'C']);
  });

  test('pick --tuning ranks twelve harps of that tuning', async () => {
    const picks = await readJson('pick', '--key', 'Am', '--tuning', 'natural-minor');
    expect(picks).toHaveLength(12);
    expect(picks[0]).toMatchObject({ position: 2, harp: 'Am natural-minor' });
  });

  test('pick --line says how much of the line each harp has', async () => {
    const line = makeLine([
      { start: 0, duration: 960, pitch: midi('G3') },
      { start: 960, duration: 960, pitch: midi('Bb3') },
    ]);
    const words = ['pick', '--key', 'G', '--own', 'C', '--line', 'line.json'];
    const { out } = await runWords(words, withFile(JSON.stringify(line)));
    expect(out).toContain(
      'the line an octave up: 50 % unbent, 50 % bent, 0 % overbent, 0 % missing',
    );
  });
});

describe('reedplate tunings', () => {
  test('tunings lists the catalogue, one a line', async () => {
    const lines = (await read('tunings')).out.trimEnd().split('\n');
    expect(lines).toHaveLength(TUNINGS.length + 1);
    for (const [index, { id }] of TUNINGS.entries()) expect(lines[index + 1]).toContain(`${id} `);
  });

  test('tunings of some shows their reeds, label, use and source', async () => {
    const { out } = await read('tunings', 'natural-minor', 'solo-twelve');
    expect(out).toMatch(/\nblow +C4 +Eb4 +G4 /u);
    expect(out).toContain('labelled Gm, which is its 2nd-position key');
    expect(out).toContain('source: Wikipedia, "Solo tuning"');
  });

  test('tunings takes an alias, and names it', async () => {
    const { out } = await read('tunings', 'country');
    expect(out).toMatch(/^raised-fifth-draw: /u);
    expect(out).toContain('\nalso: country\n');
  });

  test('tunings --json gives the catalogue as the library has it', async () => {
    expect(await readJson('tunings')).toEqual(JSON.parse(JSON.stringify(TUNINGS)));
  });

  test('tunings reads a file', async () => {
    const { out } = await runWords(['tunings', './mine.json'], withFile(OWN_TUNING));
    expect(out).toMatch(/^two-holes: two-holes\n/u);
  });
});

describe('reedplate retune', () => {
  test('retune lists the reeds that change, with cents, and each caution once', async () => {
    const { out } = await read(
      'retune',
      '--from',
      'standard',
      '--to',
      'raised-third-blow',
      '--harp',
      'D',
    );
    expect(out).toMatch(/^from D harp to D harp \(raised-third-blow\)\n/u);
    expect(out).toMatch(/\n3 +blow +A4 +B4 +\+200 +thin the tip\nleft as before: 19 reeds\n/u);
    expect(out.match(/eye protection/gu)).toHaveLength(1);
  });

  test('retune warns of soldering only where a reed is weighted', async () => {
    expect((await read('retune', '--to', 'raised-fifth-draw')).out).not.toMatch(/solder/u);
    expect((await read('retune', '--to', 'lowered-second-and-third-draw')).out).toMatch(
      /lead-free solder/u,
    );
    expect((await read('retune', '--to', 'standard')).out).not.toContain('Mind:');
  });

  test('retune keeps first position: standard C becomes natural minor Gm', async () => {
    const { to, steps } = await readJson('retune', '--to', 'natural-minor', '--harp', 'C');
    expect(to).toBe('Gm natural-minor');
    const cents: readonly number[] = steps.map((step: { cents: number }) => step.cents);
    expect(cents.filter((each) => each !== 0)).toEqual([-100, -100, -100, -100, -100]);
  });

  test('retune plans a change of temperament, and says where there is nothing to do', async () => {
    const { steps } = await readJson(
      'retune',
      '--to',
      'standard',
      '--to-temperament',
      'seven-limit',
    );
    expect(steps[9]).toMatchObject({ hole: 5, breath: 'draw', remedy: 'file-base' });
    expect(steps[9].cents).toBeCloseTo(-29.2, 1);
    expect((await read('retune', '--to', 'standard')).out).toContain('\nnothing to do\n');
  });

  test('retune marks a reed to be replaced beyond --most', async () => {
    const { out } = await read('retune', '--to', 'raised-third-blow', '--most', '150');
    expect(out).toContain('replace the reed');
  });
});

describe('reedplate temper', () => {
  test('temper shows cents and hertz of every reed', async () => {
    const { out } = await read('temper', '--harp', 'C', '--temperament', 'seven-limit');
    expect(out).toMatch(/^C harp, A4 = 440 Hz, Just, 7-limit/u);
    expect(out).toMatch(/\n5 +E5 +-13\.7 +654\.06 +F5 +-29\.2 +686\.77\n/u);
    expect(out).not.toContain('beats');
  });

  test('temper tells how a chord beats', async () => {
    const { out } = await read('temper', '--harp', 'C', '--holes', '2,3,4');
    expect(out).toMatch(/\n2-3 +5\/4 +400\.0 +\+13\.7 +15\.6\n/u);
    const { reeds, intervals } = await readJson(
      'temper',
      '--harp',
      'C',
      '--holes',
      '1,4',
      '--breath',
      'blow',
    );
    expect(reeds.map(({ hole }: { hole: number }) => hole)).toEqual([1, 4]);
    expect(intervals).toMatchObject([{ ratio: { numerator: 2, denominator: 1 } }]);
    expect(intervals[0].beats).toBeCloseTo(0, 9);
  });

  test('temper measures a chord against the proportions it is meant to have', async () => {
    const chord = ['temper', '--harp', 'C', '--temperament', 'nineteen-limit', '--holes', '4,5,6'];
    expect((await read(...chord)).out).toMatch(/\n4-5 +6\/5 +297\.5 +-18\.1 /u);
    const { out } = await read(...chord, '--proportions', '16:19:24');
    expect(out).toMatch(/\n4-5 +19\/16 +297\.5 +0\.0 +0\.0\n/u);
    const seventh = ['temper', '--harp', 'C', '--holes', '2,5', '--limit'];
    expect((await read(...seventh, '5')).out).toMatch(/\n2-5 +9\/5 /u);
    expect((await read(...seventh, '7')).out).toMatch(/\n2-5 +7\/4 /u);
  });

  test('temper says where a temperament does not hold, and what harp no one makes', async () => {
    const words = ['temper', '--harp', 'Gm', '--tuning', 'natural-minor', '--temperament'];
    const { out } = await runWords([...words, 'seven-limit'], { width: 80 });
    expect(out).toContain('Fifths far from pure on this layout: draw 3-5 (-48.8 cents), draw 7-9');
    expect((await read(...words, 'equal')).out).not.toContain('Fifths');
    expect((await read('temper', '--harp', 'F#', '--register', 'high')).out).toContain(
      'Harps in high F# are not made, as far as we know.',
    );
  });

  test('temper and retune read a Scala file', async () => {
    const scala =
      '! two.scl\nwide fifth\n12\n100.\n200.\n300.\n400.\n500.\n600.\n710.\n800.\n900.\n1000.\n1100.\n2/1\n';
    const { out } = await runWords(
      ['temper', '--harp', 'C', '--temperament', 'wide.scl'],
      withFile(scala),
    );
    expect(out).toMatch(/\n3 +G4 +\+10\.0 /u);
    const words = ['retune', '--to', 'standard', '--to-temperament', 'wide.scl'];
    expect((await runWords(words, withFile(scala))).out).toMatch(/\n3 +blow +G4 +G4 +\+10 /u);
    const broken = await runWords(words, withFile('no count'));
    expect(broken.err).toMatch(/Scala scale file \(line 2, file wide\.scl\)/u);
    expect(broken.code).toBe(2);
  });
});

describe('reedplate scale', () => {
  test('scale shows degrees, tab and a run, with what each level covers', async () => {
    const { out } = await read('scale', '--harp', 'C', '--key', 'G');
    expect(out).toMatch(/^minor blues in G on C harp, position 2\n/u);
    expect(out).toMatch(/\nb3 +Bb4 +-3'\n/u);
    expect(out).toMatch(/\nb3 +Bb5 +\(none\)\n/u);
    expect(out).toMatch(/\nup and down: -2 -3' \+4 -4' -4 -5 \+6 \(Bb5\) \+7 /u);
    expect(out).toContain('\nin brackets: cannot be sounded at this level\n');
    expect(out).toContain('100 % with overbends');
  });

  test('scale --position says the key by the harp', async () => {
    const words = ['scale', '--harp', 'C', '--json'];
    expect((await read(...words, '--position', '3')).out).toBe(
      (await read(...words, '--key', 'D')).out,
    );
  });

  test('scale --run gives the run alone, as text and as JSON', async () => {
    const words = ['scale', '--harp', 'C', '--key', 'G', '--run'];
    expect((await read(...words)).out).toMatch(/^-2 -3' \+4 -4' /u);
    const run = await readJson(...words);
    expect(run[1]).toMatchObject({ name: 'Bb4', degree: 'b3', sounding: { hole: 3, depth: 1 } });
  });
});

describe('reedplate setlist', () => {
  test('setlist changes harps as seldom as it can', async () => {
    const { steps, changes } = await readJson('setlist', 'G', 'C', 'A', '--own', 'C,D,G');
    expect(steps.map(({ pick }: { pick: { harp: string } }) => pick.harp)).toEqual(['C', 'C', 'D']);
    expect(changes).toBe(1);
    expect((await read('setlist', 'G', 'C', 'A')).out).toContain('the harp changes once');
    expect((await read('setlist', 'G', 'D', 'A', '--least', '1')).out).toContain(
      'the harp changes 2 times',
    );
  });
});

describe('the JSON of these verbs', () => {
  test.each([
    ['tunings', ['tunings']],
    ['retune', ['retune', '--to', 'natural-minor', '--to-temperament', 'compromise']],
    ['scale', ['scale', '--harp', 'C', '--key', 'Dm', '--scale', 'dorian']],
    ['setlist', ['setlist', 'G', 'Am', 'Bb']],
    ['temper', ['temper', '--harp', 'A', '--temperament', 'compromise', '--holes', '1,2,3']],
    ['map', ['map', '--tuning', 'solo-twelve', '--key', 'C', '--valved']],
    ['pick', ['pick', '--key', 'G', '--own', 'C,low F,Gm natural-minor']],
    ['pick', ['pick', '--key', 'G', '--all-reeds']],
    ['scale', ['scale', '--harp', 'C', '--key', 'Dm', '--run']],
    ['temper', ['temper', '--harp', 'A', '--all-reeds']],
    ['forms', ['forms', '--endings']],
  ])('%s --json is what schemas/%s.json describes', async (name, words) => {
    const file = fileURLToPath(new URL(`../../schemas/${name}.json`, import.meta.url));
    const schema = JSON.parse(readFileSync(file, 'utf8'));
    const isReport = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);
    expect(isReport(await readJson(...words)), JSON.stringify(isReport.errors)).toBe(true);
  });
});

describe('what is wrong', () => {
  test.each([
    [['map'], /expected --harp or --key/u],
    [['map', '--tuning', 'dorain', '--key', 'G'], /did you mean dorian\?/u],
    [['scale', '--harp', 'C'], /expected --key or --position/u],
    [['scale', '--harp', 'C', '--key', 'G', '--position', '2'], /not both/u],
    [['scale', '--harp', 'C', '--position', '0'], /1 to 12/u],
    [['tunings', 'standrad'], /did you mean standard\?/u],
    [['retune'], /--to is missing/u],
    [['retune', '--to', 'dorian', '--temperament', 'equla'], /did you mean equal\?/u],
    [['retune', '--to', 'solo-twelve'], /12 .*10 holes/u],
    [['retune', '--to', 'dorian', '--most', 'all'], /"all" .*cents/u],
    [['pick', '--key', 'G', '--own', 'C,H'], /"H" is not a key/u],
    [['pick', '--key', 'G', '--own', 'tiny C'], /"tiny" is not a key|is not a tuning/u],
    [['scale', '--harp', 'C', '--key', 'G', '--scale', 'bluse'], /did you mean blues\?/u],
    [['scale', '--harp', 'C', '--key', 'G', '--level', 'al'], /a level, natural/u],
    [['setlist', 'G', 'H'], /did you mean B\?/u],
    [['temper', '--harp', 'C', '--holes', '1,11'], /11 is not a hole/u],
    [['temper', '--harp', 'C', '--holes', '1,2', '--breath', 'blwo'], /did you mean blow\?/u],
    [['temper', '--harp', 'C', '--limit', '5'], /"--limit" .*expected --holes/u],
    [['temper', '--harp', 'C', '--proportions', '4:5'], /"--proportions" .*expected --holes/u],
    [['temper', '--harp', 'C', '--holes', '2,3', '--proportions', '4:5:6'], /2 rising whole/u],
    [
      ['temper', '--harp', 'C', '--holes', '2,3', '--proportions', '4:x'],
      /a proportion, a number/u,
    ],
    [['temper', '--harp', 'C', '--holes', '2,3', '--limit', '37'], /a prime limit, 2 to 31/u],
    [['temper', '--harp', 'C', '--a4', '4400'], /A4 in Hz, 300 to 600/u],
    [['temper', '--harp', 'C', '--temperament', 'just'], /not a temperament/u],
    [['setlist', 'G', '--least', '2'], /a share/u],
  ])('%j is refused in one line with exit code 2', async (words, message) => {
    const { code, out, err } = await read(...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });

  test.each([
    ['{', /not well-formed JSON \(.*file mine\.json\)/u],
    ['{"id":"mine","blow":"C4 E4","draw":"D4 H4"}', /"H4" .*hole 2, breath draw, file mine\.json/u],
    ['[]', /an object with id, /u],
  ])('a tuning file with %j is refused by name', async (text, message) => {
    const { code, err } = await runWords(['tunings', 'mine.json'], withFile(text));
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });
});
