import fc from 'fast-check';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { readAbc } from '../abc/read-abc.js';
import { readMusicXml } from '../musicxml/read-musicxml.js';
import { openVerovio, type VerovioReading } from '../musicxml/verovio.fixture.js';
import type { Piece } from '../piece.js';
import { jumpOrder } from './jump-order.js';
import { JUMP_SAMPLES } from './jump-samples.fixture.js';
import type { Jump, JumpKind, Measure } from './measure.js';
import { partOrder } from './part-order.js';
import { type JumpPlan, planJumps } from './plan-jumps.js';

// A busy machine takes its time over hundreds of files.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const LETTERS = 'C.D.EF.G.A.B';
const lettersOf = (pitches: readonly number[]): string =>
  pitches.map((pitch) => LETTERS[pitch - 60]).join('');
const played = ({ line }: Piece): string => lettersOf(line.notes.map(({ pitch }) => pitch));
const abc = (body: string, head = ''): Piece =>
  readAbc(`X:1\nM:4/4\nL:1/4\n${head}K:C\n${body}\n`)[0] as Piece;

const note = { offset: 0, duration: 4, pitch: 60, tied: false };
const plain: Measure = { notes: [note], chords: [], length: 4, opens: false, closes: 0, where: {} };

/** A measure with signs: `segno` and `coda` at its beginning, all others at its end. */
function measure(...kinds: readonly JumpKind[]): Measure {
  const jumps = kinds.map((kind): Jump => {
    const offset = kind === 'segno' || kind === 'coda' ? 0 : 4;
    return { kind, offset, end: offset, name: '' };
  });
  return jumps.length === 0 ? plain : { ...plain, jumps };
}

describe('planJumps', () => {
  test('planJumps finds no jump where there is no sign, or one that nothing jumps to', () => {
    expect(planJumps([])).toBe('none');
    expect(planJumps([plain, measure('segno', 'coda'), measure('fine')])).toBe('none');
  });

  test.each([
    [
      'D.C. to the fine',
      [measure(), measure('fine'), measure('da-capo')],
      { from: 2, to: 0, stop: 1 },
    ],
    [
      'D.C. without an end, past itself',
      [measure(), measure('da-capo'), measure()],
      { from: 1, to: 0 },
    ],
    [
      'D.S. to the fine',
      [measure(), measure('segno', 'fine'), measure('dal-segno')],
      { from: 2, to: 1, stop: 1 },
    ],
    [
      'D.C. over to the coda',
      [measure('to-coda'), measure('da-capo'), measure('coda')],
      { from: 1, to: 0, coda: { after: 0, to: 2 } },
    ],
  ] as const)('planJumps plans %s', (_, measures, plan) => {
    expect(planJumps(measures)).toEqual(plan satisfies JumpPlan);
  });

  test('planJumps takes the first of two coda signs for the way to the second', () => {
    const sign: Jump = { kind: 'coda', offset: 0, end: 4, name: '' };
    const measures = [{ ...plain, jumps: [sign] }, measure('da-capo'), measure('coda')];
    expect(planJumps(measures)).toEqual({ from: 1, to: 0, coda: { after: 0, to: 2 } });
  });

  test.each([
    ['two jumps back', [measure('da-capo'), measure('da-capo')]],
    ['a D.S. without segno', [measure(), measure('dal-segno')]],
    ['a D.S. before its segno', [measure('dal-segno'), measure('segno')]],
    ['two segnos', [measure('segno'), measure('segno'), measure('dal-segno')]],
    ['two fines', [measure('fine'), measure('fine'), measure('da-capo')]],
    [
      'a fine and a way to the coda',
      [measure('fine', 'to-coda'), measure('da-capo'), measure('coda')],
    ],
    ['a fine after the jump', [measure('da-capo'), measure('fine')]],
    ['a way to no coda', [measure('to-coda'), measure('da-capo')]],
    ['a coda before the way to it', [measure('coda'), measure('to-coda'), measure('da-capo')]],
    ['a fine that nothing jumps before', [measure('fine'), measure()]],
    ['a way to the coda without a jump', [measure('to-coda'), measure('coda')]],
  ])('planJumps finds %s unclear', (_, measures) => {
    expect(planJumps(measures)).toBe('unclear');
  });

  test('planJumps finds a sign within a measure unclear, but for one over its last note', () => {
    const at = (offset: number): Measure => ({
      ...plain,
      notes: [note, { ...note, offset: 2 }],
      jumps: [{ kind: 'da-capo', offset, end: offset, name: '' }],
    });
    expect(planJumps([plain, at(1)])).toBe('unclear');
    expect(planJumps([plain, at(2)])).toEqual({ from: 1, to: 0 });
  });

  test('planJumps says what is wanted by words: al fine without fine is unclear', () => {
    const back = (until: 'fine' | 'coda'): Measure => ({
      ...plain,
      jumps: [{ kind: 'da-capo', offset: 4, end: 4, name: 'yes', until }],
    });
    expect(planJumps([plain, back('fine')])).toBe('unclear');
    expect(planJumps([plain, back('coda')])).toBe('unclear');
    const both = [measure('fine', 'to-coda'), back('fine'), measure('coda')];
    expect(planJumps(both)).toEqual({ from: 1, to: 0, stop: 0 });
  });

  test('planJumps tells segnos apart by their names', () => {
    const named = (kind: JumpKind, name: string): Measure => ({
      ...plain,
      jumps: [{ kind, offset: kind === 'segno' ? 0 : 4, end: 4, name }],
    });
    const segnos = [named('segno', 'a'), named('segno', 'b')];
    expect(planJumps([...segnos, named('dal-segno', 'b')])).toEqual({ from: 2, to: 1 });
    expect(planJumps([...segnos, named('dal-segno', 'c')])).toBe('unclear');
  });

  const kinds = fc.constantFrom<JumpKind>(
    ...(['segno', 'coda', 'to-coda', 'fine', 'da-capo', 'dal-segno'] as const),
  );
  const measures = fc.array(
    fc
      .record({
        kinds: fc.array(kinds, { maxLength: 2 }),
        opens: fc.boolean(),
        closes: fc.nat({ max: 3 }),
      })
      .map(({ kinds: own, ...bars }): Measure => ({ ...measure(...own), ...bars })),
    { maxLength: 12 },
  );

  test('jumpOrder plays measures that are there, a bounded number, and ends at the fine', () => {
    fc.assert(
      fc.property(measures, (written) => {
        const plan = planJumps(written);
        if (plan === 'none' || plan === 'unclear') return;
        const order = jumpOrder(written, plan);
        expect(order.length).toBeLessThanOrEqual((16 + 1 + 16) * written.length);
        expect(order.every((at) => written[at] !== undefined)).toBe(true);
        if (plan.stop !== undefined) expect(order.at(-1)).toBe(plan.stop);
        expect(order.filter((at) => at === plan.from).length).toBeGreaterThan(0);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('readMusicXml and readAbc, jumps', () => {
  test.each(JUMP_SAMPLES)('readMusicXml plays $name as $played', ({ xml, played: expected }) => {
    const piece = readMusicXml(xml);
    expect([played(piece), piece.warnings]).toEqual([expected, []]);
  });

  test.each(JUMP_SAMPLES)('readAbc plays $name as $played', ({ abc: text, played: expected }) => {
    const [piece] = readAbc(text);
    expect([piece && played(piece), piece?.warnings]).toEqual([expected, []]);
  });

  test('readMusicXml and readAbc leave jumps unplayed where repeats are', () => {
    const [{ xml, abc: text } = { xml: '', abc: '' }] = JUMP_SAMPLES;
    expect(played(readMusicXml(xml, { repeats: false }))).toBe('CDEF');
    expect(played(readAbc(text, { repeats: false })[0] as Piece)).toBe('CDEF');
  });

  test('readAbc warns of jumps that are not clear, and plays what is written', () => {
    const piece = abc('C4 | D4 | E4 !D.S.!|]');
    expect(played(piece)).toBe('CDE');
    expect(piece.warnings).toMatchObject([{ code: 'repeat-jump', where: { line: 5 } }]);
  });

  test('readAbc plays every voice by the jumps of the one that has them', () => {
    const piece = abc('V:1\nC4 | D4 !fine!| E4 !D.C.alfine!|]\nV:2\nE4 | F4 | G4 |]');
    expect(piece.parts.map(({ line }) => lettersOf(line.notes.map(({ pitch }) => pitch)))).toEqual([
      'CDECD',
      'EFGEF',
    ]);
    const uneven = abc('V:1\nC4 | D4 !fine!| E4 !D.C.alfine!|]\nV:2\nE4 | F4 |]');
    expect(uneven.warnings).toMatchObject([{ code: 'repeat-jump' }]);
  });

  test('readMusicXml warns of a jump that words alone ask for', () => {
    const [{ xml } = { xml: '' }] = JUMP_SAMPLES;
    const silent = xml.replaceAll(/<sound [^>]*>/gu, '');
    const piece = readMusicXml(silent);
    expect(played(piece)).toBe('CDEF');
    expect(piece.warnings).toMatchObject([{ code: 'repeat-jump', value: 'D.C. al Fine' }]);
  });

  test('readMusicXml reads a segno at the left bar line', () => {
    const { xml } = JUMP_SAMPLES[1] as (typeof JUMP_SAMPLES)[number];
    const barline = '<barline location="left" segno="1"><segno/></barline>';
    const moved = xml.replace(/<direction><direction-type><segno.*?<\/direction>/u, barline);
    expect(played(readMusicXml(moved))).toBe('CDEFDE');
  });
});

describe('partOrder', () => {
  test.each([
    ['ABA', 'CDC'],
    ['AB2', 'CDD'],
    ['(AB)2', 'CDCD'],
    ['A(BA2)2B', 'CDCCDCCD'],
    ['A. B.', 'CD'],
  ])('readAbc plays the parts %s as %s', (order, expected) => {
    const piece = abc('P:A\nC4 |\nP:B\nD4 |]', `P:${order}\n`);
    expect([played(piece), piece.warnings]).toEqual([expected, []]);
  });

  test('readAbc plays repeats within a part, and gives each voice the same parts', () => {
    expect(played(abc('P:A\n|: C4 :|\nP:B\nD4 |]', 'P:ABA\n'))).toBe('CCDCC');
    const voices = abc('P:A\nV:1\nC4 |\nV:2\nE4 |\nP:B\nV:1\nD4 |\nV:2\nF4 |', 'P:BA\n');
    expect(voices.parts.map(({ line }) => lettersOf(line.notes.map(({ pitch }) => pitch)))).toEqual(
      ['DC', 'FE'],
    );
  });

  test('readAbc takes labels without an order for headings', () => {
    const piece = abc('P:A\nC4 |\nP:B\nD4 |]');
    expect([played(piece), piece.warnings]).toEqual(['CD', []]);
  });

  test.each([
    ['a label that is not there', 'P:AC\n', 'P:A\nC4 |\nP:B\nD4 |]', 'CD'],
    ['no labels', 'P:AB\n', 'C4 | D4 |]', 'CD'],
    ['music before the first label', 'P:AB\n', 'C4 |\nP:A\nD4 |\nP:B\nE4 |]', 'CDE'],
    ['a label twice', 'P:AB\n', 'P:A\nC4 |\nP:A\nD4 |\nP:B\nE4 |]', 'CDE'],
    ['a jump besides', 'P:AB\n', 'P:A\nC4 |\nP:B\nD4 !D.C.!|]', 'CD'],
  ])('readAbc warns of an order with %s, and plays what is written', (_, head, body, expected) => {
    const piece = abc(body, head);
    expect(played(piece)).toBe(expected);
    expect(piece.warnings).toMatchObject([{ code: 'repeat-jump' }]);
  });

  test.each(['A(B', 'A)', '(((A)999)999)999', `${'A'.repeat(1001)}`, '1', 'A-B'])(
    'readAbc passes over an order that is none: %j',
    (order) => {
      const piece = abc('P:A\nC4 |\nP:B\nD4 |]', `P:${order}\n`);
      expect(played(piece)).toBe('CD');
      expect(piece.warnings).toMatchObject([{ code: 'field-unknown' }]);
    },
  );

  test('partOrder gives nothing for more parts than a tune has', () => {
    const labelled = [{ ...plain, label: 'A' }];
    expect(partOrder(labelled, ['A', 'A'])).toEqual([0, 0]);
    expect(
      partOrder(
        labelled,
        Array.from({ length: 201 }, () => 'A'),
      ),
    ).toBeUndefined();
  });
});

// Outside check: Verovio 6.3.0. It plays neither a repeat before a D.S. nor a coda after one as written
// (two of these samples, which MuseScore 3.2.3 plays as we do: scripts/interchange/check-outside.ts).
describe('jumps, played by another reader', () => {
  let read: (xml: string) => VerovioReading;
  beforeAll(async () => {
    read = await openVerovio();
  });

  const known = JUMP_SAMPLES.filter(({ name }) => !name.includes('dsCoda'));

  test.each(known)('Verovio plays $name as $played', ({ xml, played: expected }) => {
    expect(lettersOf(read(xml).notes.map(([, , pitch]) => pitch))).toBe(expected);
  });
});
