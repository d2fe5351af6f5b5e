import { oneOf, type Random } from './random.js';

/** Values that a reader of JSON has not asked for. */
const VALUES: readonly unknown[] = [
  null,
  true,
  -1,
  0,
  0.5,
  128,
  1e9,
  1e308,
  '',
  'C',
  '4/4',
  [],
  {},
  [[]],
  { length: 3 },
];

/** JSON of the same kind, with some values taken out, doubled, exchanged or put in the place of others. */
export function mutateJson(text: string, random: Random): string {
  let value: unknown = JSON.parse(text);
  for (let changes = 1 + random(4); changes > 0; changes -= 1) value = changeWithin(value, random);
  return JSON.stringify(value);
}

function changeWithin(value: unknown, random: Random): unknown {
  if (typeof value !== 'object' || value === null || random(6) === 0) return changed(value, random);
  const parts = Object.entries(value);
  const at = random(parts.length + 1);
  const [name, part] = parts[at] ?? [oneOf(['notes', '__proto__', 'x'], random), 0];
  const inside = (): unknown => changeWithin(part, random);
  if (Array.isArray(value)) {
    const list: unknown[] = [...value];
    const how = random(4);
    if (how === 0) list.splice(at, 1);
    else if (how === 1) list.splice(at, 0, ...list.slice(at, at + 1 + random(8)));
    else list[at] = inside();
    return list;
  }
  const rest = parts.filter(([other]) => other !== name);
  return random(5) === 0
    ? Object.fromEntries(rest)
    : Object.fromEntries([...rest, [name, inside()]]);
}

function changed(value: unknown, random: Random): unknown {
  if (typeof value === 'number' && random(2) === 0) return value * oneOf([-1, 0, 2, 1000], random);
  return oneOf(VALUES, random);
}

const ELEMENT = /<([a-z-]+)(?:\s[^<>]*)?>[^<>]*<\/\1>|<[a-z-]+(?:\s[^<>]*)?\/>/gu;
const CONTENTS = [
  '',
  '0',
  '-1',
  '1',
  '999999',
  '0.5',
  'x',
  'start',
  'stop',
  'quarter',
  'C',
] as const;

/** A MusicXML file, still well formed, with some of its innermost elements taken out, doubled or filled otherwise. */
export function mutateXml(text: string, random: Random): string {
  let changedText = text;
  for (let changes = 1 + random(5); changes > 0; changes -= 1) {
    const found = [...changedText.matchAll(ELEMENT)];
    const [element = '', name = ''] = oneOf(found, random) ?? [];
    const { index = 0 } = found.find((each) => each[0] === element) ?? {};
    const [other = ''] = oneOf(found, random) ?? [];
    const instead = [
      '',
      element.repeat(2 + random(20)),
      other,
      name === '' ? element : `<${name}>${oneOf(CONTENTS, random)}</${name}>`,
    ][random(4)];
    changedText =
      changedText.slice(0, index) + (instead ?? '') + changedText.slice(index + element.length);
  }
  return changedText;
}
