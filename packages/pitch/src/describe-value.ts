const LONGEST_SHOWN_VALUE = 60;

/**
 * A value as a message shows it: text in quotes, numbers and booleans as they are, and for all else
 * what kind of thing it is. An object is never printed out: it may be a whole chart.
 */
export function describeValue(value: unknown): string {
  switch (typeof value) {
    case 'string':
      return JSON.stringify(shorten(value));
    case 'number':
      return describeNumber(value);
    case 'boolean':
      return String(value);
    case 'undefined':
      return 'nothing';
    case 'object':
      return value === null ? 'null' : describeObject(value);
    default:
      return `a ${typeof value}`;
  }
}

function describeNumber(value: number): string {
  if (Number.isNaN(value)) return 'a number without a value';
  return Number.isFinite(value) ? String(value) : 'an endless number';
}

function shorten(text: string): string {
  if (text.length <= LONGEST_SHOWN_VALUE) return text;
  // A pair of surrogates is kept whole or left out.
  const end = text.slice(0, LONGEST_SHOWN_VALUE - 1).replace(/[\uD800-\uDBFF]$/, '');
  return `${end}…`;
}

/** Kinds of objects that a caller may take for another: `a Map`, `an Int16Array`. */
const KNOWN_KIND = /^(?:Map|Set|Date|RegExp|Promise|ArrayBuffer|DataView|\w{3,9}Array|Blob)$/u;

function describeObject(value: object): string {
  try {
    if (Array.isArray(value))
      return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
    const kind = Object.prototype.toString.call(value).slice('[object '.length, -1);
    if (!KNOWN_KIND.test(kind)) return 'an object';
    return `${/^[AI]/u.test(kind) ? 'an' : 'a'} ${kind}`;
  } catch {
    // A proxy that was taken back throws whatever is asked of it.
    return 'an object';
  }
}
