import type { Feel } from '@reedplate/form';
import type { Metre } from '@reedplate/line';
import type { KeyName } from '@reedplate/pitch';
import type { WarningList } from '../warning.js';
import { readAbcText } from './abc-text.js';
import {
  defaultUnit,
  quartersOf,
  readMetreField,
  readTempoField,
  readUnitField,
  type TempoField,
} from './fields.js';
import { hasShift, type KeyField, readKeyField, readShift } from './key-field.js';
import { readPartOrder } from './part-field.js';
import { readSign } from './read-music.js';
import { tokenise } from './tokens.js';
import { currentVoice, hasNotes, type Tune, unitOf } from './tune.js';
import type { SourceLine, TuneLines } from './tune-book.js';
import {
  ACCIDENTAL_REACHES,
  type AccidentalReach,
  addVoiceEvent,
  closeMeasure,
  type Voice,
} from './voice.js';

/** A tune as written: its head, and its voices bar by bar with repeats not yet played. */
export interface WrittenTune {
  readonly title?: string;
  readonly key?: KeyName;
  readonly metre: Metre;
  readonly tempo?: TempoField;
  /** As `R:` names it; undefined for straight. */
  readonly feel?: Feel;
  readonly voices: readonly Voice[];
  /** As `I:count-in` gives it. */
  readonly countIn?: number;
  /** As `P:` in the head gives it. */
  readonly partOrder?: readonly string[];
}

const FIELD = /^([A-Za-z+]):(?![|:])\s*(.*)$/su;

/** Reads the lines of one tune. */
export function readTune(
  lines: TuneLines,
  reach: AccidentalReach,
  warnings: WarningList,
): WrittenTune {
  const tune: Tune = {
    reach,
    inBody: false,
    signature: new Map(),
    shift: 0,
    voices: new Map(),
    current: '',
  };
  for (const line of lines) readLine(line, tune, warnings);
  const voices = [...tune.voices.values()];
  for (const voice of voices) {
    closeMeasure(voice, { opens: false, closes: 0, endsSection: true }, {});
  }
  if (!tune.inBody) warnings.add('key-missing');
  if (tune.metre === undefined) warnings.add('metre-missing');
  return {
    ...(tune.title === undefined ? {} : { title: tune.title }),
    ...(tune.key === undefined ? {} : { key: tune.key }),
    metre: tune.metre?.metre ?? '4/4',
    ...(tune.tempo === undefined ? {} : { tempo: tune.tempo }),
    ...(tune.countIn === undefined ? {} : { countIn: tune.countIn }),
    ...(tune.feel === undefined ? {} : { feel: tune.feel }),
    voices,
    ...(tune.partOrder === undefined ? {} : { partOrder: tune.partOrder }),
  };
}

function readLine({ text, line }: SourceLine, tune: Tune, warnings: WarningList): void {
  const [, field, value = ''] = FIELD.exec(text) ?? [];
  if (field !== undefined) {
    readField(field, value, { tune, line, warnings });
    return;
  }
  for (const token of tokenise(text)) {
    if (token.kind === 'field') {
      readField(token.text.charAt(1), token.text.slice(3, -1).trim(), { tune, line, warnings });
    } else {
      readSign(token, { voice: currentVoice(tune), line, warnings });
    }
  }
}

interface FieldContext {
  readonly tune: Tune;
  readonly line: number;
  readonly warnings: WarningList;
}

type FieldReader = (value: string, context: FieldContext) => void;

const FIELD_READERS: ReadonlyMap<string, FieldReader> = new Map([
  ['T', readTitle],
  ['K', readKey],
  ['M', readMetre],
  ['L', readUnit],
  ['Q', readTempo],
  ['R', readRhythm],
  ['V', readVoice],
  ['I', readInstruction],
  ['P', readPart],
  ['w', (_, { warnings, line }) => warnings.add('words', { line })],
  // A macro may stand for notes.
  ['m', (value, { warnings, line }) => warnings.add('field-unknown', { line }, `m:${value}`)],
]);

/** Fields that tell about the tune, such as its composer, say nothing of its notes. */
function readField(field: string, value: string, context: FieldContext): void {
  FIELD_READERS.get(field)?.(value, context);
}

function readTitle(value: string, { tune }: FieldContext): void {
  const title = readAbcText(value);
  if (title !== '') tune.title ??= title;
}

function readKey(value: string, context: FieldContext): void {
  const { tune, line, warnings } = context;
  const read = readKeyField(value);
  if (read !== undefined) setKey(read, value, context);
  // A clef alone, such as K:bass, is no slip.
  else if (!hasShift(value) && !/perc/u.test(value)) {
    warnings.add('field-unknown', { line }, `K:${value}`);
  }
  if (hasShift(value)) setShift(readShift(value), tune);
  tune.inBody = true;
}

function setKey(
  { key, signature }: KeyField,
  value: string,
  { tune, line, warnings }: FieldContext,
): void {
  if (hasNotes(tune)) {
    if (key !== tune.key) warnings.add('key-change', { line }, `K:${value}`);
    currentVoice(tune).signature = signature;
    return;
  }
  if (key !== undefined) tune.key = key;
  tune.signature = signature;
  for (const voice of tune.voices.values()) voice.signature = signature;
}

/** A key in the head shifts voices that were opened before it, too. */
function setShift(shift: number, tune: Tune): void {
  if (hasNotes(tune)) {
    currentVoice(tune).shift = shift;
    return;
  }
  for (const voice of tune.voices.values()) voice.shift += shift - tune.shift;
  tune.shift = shift;
}

function readMetre(value: string, { tune, line, warnings }: FieldContext): void {
  const read = readMetreField(value);
  if (read === undefined || (read.size !== undefined && read.metre === undefined)) {
    warnings.add('field-unknown', { line }, `M:${value}`);
    return;
  }
  if (!hasNotes(tune)) tune.metre = read;
  else if (read.metre !== tune.metre?.metre) warnings.add('metre-change', { line }, `M:${value}`);
  // A metre after the head does not change the unit of length.
  if (tune.inBody) tune.unitTicks ??= defaultUnit(tune.metre ?? {});
  for (const voice of tune.voices.values()) voice.metre = read;
}

function readUnit(value: string, { tune, line, warnings }: FieldContext): void {
  const ticks = readUnitField(value);
  if (ticks === undefined) {
    warnings.add('field-unknown', { line }, `L:${value}`);
  } else if (tune.inBody && tune.voices.size > 0) {
    currentVoice(tune).unitTicks = ticks;
  } else {
    tune.unitTicks = ticks;
  }
}

function readTempo(value: string, { tune, line, warnings }: FieldContext): void {
  const tempo = readTempoField(value, unitOf(tune));
  if (tempo === undefined) {
    // Words alone, such as "slow", give no number to lose.
    if (/\d/u.test(value)) warnings.add('field-unknown', { line }, `Q:${value}`);
    return;
  }
  if (!hasNotes(tune)) tune.tempo = tempo;
  else addVoiceEvent(currentVoice(tune), { kind: 'tempo', quarters: quartersOf(tempo) });
}

function readRhythm(value: string, { tune }: FieldContext): void {
  if (/shuffle|swing/iu.test(value)) tune.feel = 'shuffle';
}

function readVoice(value: string, { tune }: FieldContext): void {
  const [id = '', ...rest] = value.split(/\s+/u);
  tune.current = id;
  const voice = currentVoice(tune);
  const properties = rest.join(' ');
  const [, quoted, plain] = /\b(?:name|nm)=(?:"([^"]*)"|(\S+))/u.exec(properties) ?? [];
  voice.name = quoted ?? plain ?? voice.name;
  // A voice is often named again with all that was said of it before.
  if (hasShift(properties)) voice.shift = tune.shift + readShift(properties);
}

/** In the head the order of all parts, in the body the label of the one that begins. */
function readPart(value: string, { tune, line, warnings }: FieldContext): void {
  if (!tune.inBody) {
    const order = readPartOrder(value);
    if (order === undefined) warnings.add('field-unknown', { line }, `P:${value}`);
    else tune.partOrder = order;
    return;
  }
  // Without an order, a label is a heading.
  if (tune.partOrder === undefined) return;
  tune.label = value.trim();
  for (const voice of tune.voices.values()) {
    closeMeasure(voice, { opens: false, closes: 0, endsSection: true }, { line });
    voice.label = tune.label;
  }
}

const MOST_COUNT_IN = 64;

function setCountIn(bars: number, { tune, line, warnings }: FieldContext): void {
  if (Number.isInteger(bars) && bars > 0 && bars <= MOST_COUNT_IN) tune.countIn = bars;
  else warnings.add('field-unknown', { line }, 'I:count-in');
}

function readInstruction(value: string, context: FieldContext): void {
  const { tune } = context;
  const [name, setting = ''] = value.split(/\s+/u);
  const reach = ACCIDENTAL_REACHES.find((known) => known === setting);
  if (name === 'count-in') setCountIn(Number(setting), context);
  if (name !== 'propagate-accidentals' || reach === undefined) return;
  tune.reach = reach;
  for (const voice of tune.voices.values()) voice.reach = reach;
}
