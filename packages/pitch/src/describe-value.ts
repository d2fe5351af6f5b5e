const LONGEST_SHOWN_VALUE = 60;

/**
 * A value as a message shows it: text in quotes, numbers and booleans as they are, and for all else
 * what kind of thing it is. An object is never printed out: it may be a whole chart.
 */
export function describeValue(value: unknown): string {
  switch (typeof value) {
    case 'string':
      return inQuotes(value);
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

/** Text in quotes, every sign of it one that can be seen, and cut where it grows too long. */
function inQuotes(text: string): string {
  // A pair of surrogates is one sign, kept whole or left out.
  const signs = Array.from(text.slice(0, 2 * LONGEST_SHOWN_VALUE), (sign) =>
    visible(JSON.stringify(sign).slice(1, -1)),
  );
  const whole = signs.join('');
  if (text.length <= LONGEST_SHOWN_VALUE && whole.length <= LONGEST_SHOWN_VALUE)
    return `"${whole}"`;
  let shown = '';
  for (const sign of signs) {
    if (shown.length + sign.length >= LONGEST_SHOWN_VALUE) break;
    shown += sign;
  }
  return `"${shown}…"`;
}

/** What moves the cursor, breaks the line or turns the direction of writing, and is not seen. */
const UNSEEN = /[\p{Cc}\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069\uFEFF]/gu;

/** Text with the signs written out that would not be seen, or that would move what is. */
export function visible(text: string): string {
  return text.replace(UNSEEN, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);
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
