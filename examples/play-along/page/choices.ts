import { GROOVES } from '@reedplate/backing';
import { FEELS, FORMS, VARIATIONS } from '@reedplate/form';
import { TUNINGS } from '@reedplate/layout';
import { TWELVE_KEYS } from '@reedplate/pitch';
import { PRACTICE_KINDS } from '@reedplate/practice';
import { PARTS, readSetUp, type SetUp } from '../src/set-up.js';
import { byId } from './elements.js';

type Choice = readonly [value: string, words: string];

const words = (id: string): string => id.replaceAll('-', ' ');
const named = (list: readonly { readonly id: string; readonly name: string }[]): Choice[] =>
  list.map(({ id, name }) => [id, name]);
const plain = (list: readonly string[]): Choice[] => list.map((each) => [each, words(each)]);

const SELECTS: Readonly<Record<string, readonly Choice[]>> = {
  key: TWELVE_KEYS.map(({ name }) => [name, name]),
  form: named(FORMS),
  feel: [['', 'That of the form'], ...plain(FEELS)],
  harp: [['', 'The best for the song'], ...TWELVE_KEYS.map(({ name }): Choice => [name, name])],
  tuning: named(TUNINGS),
  line: [['', 'None'], ...plain(PRACTICE_KINDS)],
  groove: [['', 'By feel and metre'], ...named(GROOVES)],
};

/** Fills the choices with what there is. */
export function fillChoices(): void {
  for (const [id, choices] of Object.entries(SELECTS)) {
    const options = choices.map(([value, text]) => new Option(text, value));
    byId(id, HTMLSelectElement).replaceChildren(...options);
  }
  byId('variations', HTMLElement).replaceChildren(
    ...VARIATIONS.map((name) => checkBox('variations', name)),
  );
  byId('mute', HTMLElement).replaceChildren(
    ...PARTS.map((name) => checkBox('mute', name, `No ${name === 'comping' ? 'chords' : name}`)),
  );
}

function checkBox(name: string, value: string, text = words(value)): HTMLElement {
  const label = document.createElement('label');
  const box = document.createElement('input');
  Object.assign(box, { type: 'checkbox', name, value, id: `${name}-${value}` });
  label.htmlFor = box.id;
  label.className = 'check';
  label.append(box, ` ${text}`);
  return label;
}

/** Fields that hold several values, a whole number, or yes and no. */
const LISTS = new Set(['variations', 'mute']);
const FLAGS = new Set(['click', 'voice']);
const NUMBERS = new Set('tempo choruses countIn loopFrom loopTo volume latency'.split(' '));

const theForm = (): HTMLFormElement => byId('choices', HTMLFormElement);

/** What is chosen; a field that holds nonsense is as on a first visit. */
export function readChoices(): SetUp {
  const data = new FormData(theForm());
  const names = new Set([...data.keys(), ...LISTS, ...FLAGS]);
  const fields = [...names].map((name) => {
    if (LISTS.has(name)) return [name, data.getAll(name)];
    if (FLAGS.has(name)) return [name, data.has(name)];
    const value = data.get(name);
    return [name, NUMBERS.has(name) ? Math.round(Number(value)) : value];
  });
  return readSetUp(JSON.stringify(Object.fromEntries(fields)));
}

/** Shows a set-up in the fields. */
export function showChoices(setUp: SetUp): void {
  for (const field of theForm().elements) {
    const isField = field instanceof HTMLInputElement || field instanceof HTMLSelectElement;
    if (!isField || !(field.name in setUp)) continue;
    const value = setUp[field.name as keyof SetUp];
    if (field instanceof HTMLInputElement && field.type === 'checkbox') {
      field.checked = Array.isArray(value) ? value.includes(field.value) : value === true;
    } else field.value = String(value);
  }
}
