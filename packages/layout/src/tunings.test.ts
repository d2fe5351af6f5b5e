import { describe, expect, it } from 'vitest';
import type { CatalogueRow } from './catalogue-row.js';
import {
  editTuning,
  makeHarp,
  makeTuning,
  missingPitches,
  readTuning,
  TUNINGS,
  tuningById,
} from './index.js';
import { TUNING_ROWS } from './tuning-rows.js';

const failure = (details: object) =>
  expect.objectContaining({ code: 'TUNING_INVALID', ...details });

describe('TUNINGS', () => {
  const rows: readonly CatalogueRow[] = TUNING_ROWS;
  it.each(rows.map((row) => ({ id: row[0], row })))(
    'reads $id as makeTuning does, frozen',
    ({ row }) => {
      const [id, name, use, source, blow, draw, more] = row;
      const read = tuningById(id);
      expect(read).toEqual(makeTuning({ id, name, use, source, blow, draw, ...more }));
      for (const part of [read, read.holes, ...read.holes])
        expect(Object.isFrozen(part)).toBe(true);
    },
  );

  it('holds at least 24 tunings, each with an id, a name and rows of its own', () => {
    expect(TUNINGS.length).toBeGreaterThanOrEqual(24);
    const unique = (values: readonly string[]) => new Set(values).size;
    expect(unique(TUNINGS.map(({ id }) => id))).toBe(TUNINGS.length);
    expect(unique(TUNINGS.map(({ name }) => name))).toBe(TUNINGS.length);
    expect(unique(TUNINGS.map(({ holes }) => JSON.stringify(holes)))).toBe(TUNINGS.length);
  });

  it('tells of each tuning what it is for and where it is from', () => {
    for (const { use, source } of TUNINGS) {
      expect(use).toMatch(/^[A-Z].*\.$/u);
      expect(source).toMatch(
        /^(common practice|from memory|own construction|worked out here from an idea known to the trade|[A-Z].+)$/u,
      );
    }
  });

  it('does not call its own what is known to the trade', () => {
    for (const id of ['exchanged-top', 'repeated-low-end'] as const) {
      expect(tuningById(id).source).toBe('worked out here from an idea known to the trade');
    }
  });

  it('says of the lowered second and third draw that the low 7th is missing, as it is', () => {
    const harp = makeHarp('C', { tuning: 'lowered-second-and-third-draw' });
    expect(tuningById('lowered-second-and-third-draw').use).toContain(
      'the 7th of first position comes on 7 draw only',
    );
    expect(missingPitches(harp, { lowest: 71, highest: 71 })).toEqual([71]);
  });

  it('begins no word of use with what reads like the name of a model', () => {
    for (const { use } of TUNINGS) expect(use).not.toMatch(/^(?:Easy|Melod)/u);
  });

  it('names each tuning once, by its id and by its aliases, all of one shape', () => {
    const names = TUNINGS.flatMap(({ id, aliases = [] }) => [id, ...aliases]);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/u);
  });

  it('takes an alias wherever it takes an id, and keeps the id', () => {
    for (const { id, aliases = [] } of TUNINGS) {
      for (const alias of aliases) {
        expect(tuningById(alias).id).toBe(id);
        expect(makeHarp('C', { tuning: alias }).tuning).toBe(id);
      }
    }
    expect(TUNINGS.flatMap(({ aliases = [] }) => aliases)).toContain('country');
  });

  it('begins with the standard tuning', () => {
    expect(TUNINGS[0]?.id).toBe('standard');
  });

  it('is frozen to the last reed', () => {
    expect(Object.isFrozen(TUNINGS)).toBe(true);
    expect(TUNINGS.every(({ holes }) => holes.every((reeds) => Object.isFrozen(reeds)))).toBe(true);
  });

  it('labels by second position exactly the tunings sold by their cross-harp key', () => {
    const second = TUNINGS.filter(({ labelPosition }) => labelPosition === 2);
    expect(second.map(({ id, label }) => `${id} ${label}`)).toEqual([
      'raised-third-blow-and-fifth-and-ninth-draw G',
      'natural-minor Gm',
      'harmonic-minor-second-position Gm',
      'dorian Gm',
      'circular-second-draw G',
    ]);
  });
});

describe('a tuning named by its change', () => {
  it.each([
    ['raised-third-blow', ['3 blow up 2']],
    ['raised-fifth-draw', ['5 draw up 1']],
    ['raised-fifth-and-ninth-draw', ['5 draw up 1', '9 draw up 1']],
    ['raised-third-blow-and-fifth-draw', ['3 blow up 2', '5 draw up 1']],
    ['raised-third-blow-and-fifth-and-ninth-draw', ['3 blow up 2', '5 draw up 1', '9 draw up 1']],
    [
      'natural-minor',
      ['2 blow down 1', '5 blow down 1', '8 blow down 1', '3 draw down 1', '7 draw down 1'],
    ],
    [
      'harmonic-minor',
      ['2 blow down 1', '5 blow down 1', '8 blow down 1', '6 draw down 1', '10 draw down 1'],
    ],
    ['melodic-minor', ['2 blow down 1', '5 blow down 1', '8 blow down 1']],
    ['dorian', ['3 draw down 1', '7 draw down 1']],
    ['lowered-second-and-third-draw', ['2 draw down 2', '3 draw down 2']],
    ['lowered-second-draw', ['2 draw down 2']],
  ])('editTuning makes %s from the standard tuning', (id, edits) => {
    const edited = editTuning('standard', edits, { id });
    expect(edited.holes).toEqual(tuningById(id).holes);
  });

  it('exchanged-top has every draw reed above its blow reed, the rest of the standard unchanged', () => {
    const exchanged = tuningById('exchanged-top').holes;
    expect(exchanged.every(({ blow, draw }) => draw > blow)).toBe(true);
    const pairs = (holes: typeof exchanged) =>
      holes.map(({ blow, draw }) => [blow, draw].sort((a, b) => a - b));
    expect(pairs(exchanged)).toEqual(pairs(tuningById('standard').holes));
  });

  it('diminished and augmented repeat their pattern from hole to hole', () => {
    const steps = (id: string) => {
      const { holes } = tuningById(id);
      return new Set(holes.slice(1).map(({ blow }, index) => blow - (holes[index]?.blow ?? 0)));
    };
    expect(steps('diminished')).toEqual(new Set([3]));
    expect(steps('augmented')).toEqual(new Set([4]));
    expect(steps('alternating-thirds')).toEqual(new Set([3, 4]));
    expect(steps('whole-tone')).toEqual(new Set([2]));
    expect(steps('whole-tone-wide')).toEqual(new Set([4]));
  });

  it('alternating thirds has every note by draw bends, and a triad on any three blow holes', () => {
    const harp = makeHarp('C', { tuning: 'alternating-thirds' });
    expect(missingPitches(harp, { level: 'bends' })).toEqual([]);
    const blow = harp.holes.map((hole) => hole.blow);
    const triads = blow
      .slice(2)
      .map((fifth, at) => [(blow[at + 1] ?? 0) - (blow[at] ?? 0), fifth - (blow[at] ?? 0)]);
    expect(new Set(triads.map(String))).toEqual(new Set(['4,7', '3,7']));
    expect(harp.holes.every(({ draw }, at) => (blow[at + 1] ?? draw + 1) - draw === 1)).toBe(true);
  });

  it('the circular tunings rise through a seven-note scale, breath after breath', () => {
    for (const id of ['circular-first-blow', 'circular-second-draw']) {
      const rising = tuningById(id).holes.flatMap(({ blow, draw }) => [blow, draw]);
      const steps = rising.slice(1).map((pitch, index) => pitch - (rising[index] ?? 0));
      expect(steps.every((step) => step === 1 || step === 2)).toBe(true);
    }
  });
});

describe('tuningById', () => {
  it.each([
    ['natural-miner', 'natural-minor'],
    ['diminshed', 'diminished'],
    ['Standard', 'standard'],
  ])('throws TUNING_UNKNOWN for %s and suggests %s', (id, nearest) => {
    expect(() => tuningById(id)).toThrow(
      expect.objectContaining({ code: 'TUNING_UNKNOWN', nearest }),
    );
  });

  it.each(['valueOf', '__proto__', 'constructor', ''])('is not fooled by %j', (id) => {
    expect(() => tuningById(id)).toThrow(expect.objectContaining({ code: 'TUNING_UNKNOWN' }));
  });
});

describe('makeTuning', () => {
  it('takes rows as one text, as names, as numbers or mixed', () => {
    const rows = [
      { blow: 'C4 E4', draw: 'D4 G4' },
      { blow: ['C4', 'E4'], draw: ['D4', 'G4'] },
      { blow: [60, 'Fb4'], draw: [62, 67] },
    ];
    const holes = rows.map((row) => makeTuning({ id: 'two', ...row }).holes);
    expect(holes[1]).toEqual(holes[0]);
    expect(holes[2]).toEqual(holes[0]);
  });

  it('fills in what is not said', () => {
    const longest = 'x'.repeat(80);
    expect(makeTuning({ id: longest, blow: 'C4', draw: 'D4' }).id).toBe(longest);
    expect(() => makeTuning({ id: `${longest}x`, blow: 'C4', draw: 'D4' })).toThrow(/lower-case/u);
    expect(makeTuning({ id: 'two', blow: 'C4', draw: 'D4' })).toEqual({
      id: 'two',
      name: 'two',
      use: '',
      source: 'own construction',
      label: 'C',
      labelPosition: 1,
      holes: [{ hole: 1, blow: 60, draw: 62 }],
    });
  });

  it.each([
    [
      'a wrong note',
      { blow: 'C4 E4', draw: 'D4 H4' },
      { value: 'H4', where: { hole: 2, breath: 'draw' } },
    ],
    ['a note without octave', { blow: 'C', draw: 'D4' }, { where: { hole: 1, breath: 'blow' } }],
    ['a missing reed', { blow: 'C4 E4', draw: 'D4' }, { where: { hole: 2, breath: 'draw' } }],
    ['a reed too many', { blow: 'C4', draw: 'D4 E4' }, { where: { hole: 2, breath: 'blow' } }],
    ['a reed too low', { blow: [1], draw: [2] }, { value: 1, where: { hole: 1, breath: 'blow' } }],
    ['a reed too high', { blow: [60], draw: [127] }, { where: { hole: 1, breath: 'draw' } }],
    ['half a semitone', { blow: [60.5], draw: [62] }, { where: { hole: 1, breath: 'blow' } }],
    ['no holes', { blow: [], draw: [] }, { where: { breath: 'blow' } }],
    ['17 holes', { blow: Array(17).fill(60), draw: Array(17).fill(62) }, { value: 17 }],
    ['no row', { blow: null as never, draw: 'C4' }, { where: { breath: 'blow', path: 'blow' } }],
  ])('throws TUNING_INVALID for %s, and says where', (_, rows, details) => {
    expect(() => makeTuning({ id: 'wrong', ...rows })).toThrow(failure(details));
  });

  it.each([
    ['id', 'Two Words'],
    ['id', ''],
    ['id', 7],
    ['name', 7],
    ['use', null],
    ['source', {}],
    ['label', 5],
    ['labelPosition', 3],
    ['aliases', 'one'],
    ['aliases', Array(17).fill('one')],
  ])('throws TUNING_INVALID for %s %j', (path, value) => {
    const spec = { id: 'two', blow: 'C4', draw: 'D4', [path]: value };
    expect(() => makeTuning(spec as never)).toThrow(failure({ where: { path } }));
  });

  it('keeps aliases, and names the one that has not the shape of an id', () => {
    const spec = { id: 'two', blow: 'C4', draw: 'D4' };
    const tuning = makeTuning({ ...spec, aliases: ['pair', 'tiny-pair'] });
    expect(tuning.aliases).toEqual(['pair', 'tiny-pair']);
    expect(readTuning(JSON.stringify(tuning))).toEqual(tuning);
    expect(makeHarp('C', { tuning: 'pair', known: { tunings: [tuning] } }).tuning).toBe('two');
    expect(() => makeTuning({ ...spec, aliases: ['pair', 'A Pair'] })).toThrow(
      failure({ value: 'A Pair', where: { path: 'aliases[1]' } }),
    );
  });

  it('throws KEY_UNKNOWN for a label that is no key', () => {
    expect(() => makeTuning({ id: 'two', blow: 'C4', draw: 'D4', label: 'H' })).toThrow(
      expect.objectContaining({ code: 'KEY_UNKNOWN' }),
    );
  });
});

describe('editTuning', () => {
  it('adds up edits of the same reed', () => {
    const edited = editTuning('standard', ['1 blow up 2', '1 blow down 1'], { id: 'edited' });
    expect(edited.holes[0]?.blow).toBe(61);
  });

  it('keeps the label and the use, and names itself as told', () => {
    const edited = editTuning('natural-minor', [{ hole: 1, breath: 'blow', by: 1 }], {
      id: 'edited',
      name: 'Edited',
    });
    expect(edited).toMatchObject({ label: 'Gm', labelPosition: 2, name: 'Edited', id: 'edited' });
    expect(edited.source).toBe('own construction');
  });

  it.each([
    ['3 up', {}],
    ['3 blow up', {}],
    ['x blow up 2', {}],
    ['17 blow up 2', { where: { breath: 'blow' } }],
    ['11 draw up 1', { where: { hole: 11, breath: 'draw' } }],
    ['1 draw up 90', { where: { hole: 1, breath: 'draw' } }],
    [{ hole: 1, breath: 'blow', by: 0.5 }, { where: { hole: 1, breath: 'blow' } }],
    [{ hole: 1, breath: 'sip', by: 1 }, { value: 'sip' }],
    [null, {}],
  ])('throws TUNING_INVALID for %j', (edit, details) => {
    expect(() => editTuning('standard', [edit as string], { id: 'edited' })).toThrow(
      failure(details),
    );
  });
});

describe('readTuning', () => {
  it.each([null, 7, '"standard"', [], undefined])('throws TUNING_INVALID for %j', (value) => {
    expect(() => readTuning(value)).toThrow(failure({}));
  });

  it('names the hole of a list out of order', () => {
    const holes = [
      { hole: 1, blow: 60, draw: 62 },
      { hole: 3, blow: 64, draw: 67 },
    ];
    expect(() => readTuning({ id: 'two', holes })).toThrow(
      failure({ value: 3, where: { path: 'holes[1]' } }),
    );
    expect(() => readTuning({ id: 'two', holes: [null] })).toThrow(
      failure({ value: null, where: { path: 'holes[0]' } }),
    );
    expect(() => readTuning({ id: 'two', holes: 'C4' })).toThrow(
      failure({ where: { path: 'holes' } }),
    );
    expect(() => readTuning({ id: 'two', holes: [{ hole: 1, blow: 60 }] })).toThrow(
      failure({ where: { hole: 1, breath: 'draw' } }),
    );
  });

  it('reads text and values alike, and a specification as well as a tuning', () => {
    const made = makeTuning({ id: 'two', blow: 'C4', draw: 'D4' });
    expect(readTuning('{"id":"two","blow":"C4","draw":["D4"]}')).toEqual(made);
    expect(readTuning(JSON.stringify(made))).toEqual(made);
    expect(() => readTuning('{"id":')).toThrow(expect.objectContaining({ code: 'JSON_MALFORMED' }));
  });

  it('refuses a field it does not know, and names the nearest', () => {
    const spec = { id: 'two', blow: 'C4', draw: 'D4', lable: 'G' };
    expect(() => readTuning(spec)).toThrow(failure({ value: 'lable', nearest: 'label' }));
    const holes = [{ hole: 1, blow: 60, draw: 62, reeds: 2 }];
    expect(() => readTuning({ id: 'two', holes })).toThrow(
      failure({ where: { path: 'holes[0].reeds' } }),
    );
  });
});
