/** A word of JSON: text, a sign, or a bare word. What is looked through here was read by JSON.parse before. */
const TOKEN = /"(?:[^"\\]|\\.)*"|[{}[\],:]|[^\s{}[\],:"]+/gu;

/** An object or a list that is being read, and what comes next in it: null where its name is not read yet. */
interface Open {
  readonly isList: boolean;
  next: string | number | null;
}

/**
 * The line, from 1, in which the value at a path such as `[2].notes[0].at` begins in a text of JSON; of a field
 * that is not there, the line of what should hold it.
 */
export function lineOfPath(text: string, path: string): number {
  const open: Open[] = [];
  let found = 0;
  for (const { 0: token, index } of text.matchAll(TOKEN)) {
    if (!isValue(token, open.at(-1))) {
      if (token === '}' || token === ']') open.pop();
      continue;
    }
    // What lies on the way is met before what lies in it.
    if (leadsTo(pathOf(open), path)) found = index;
    if (token === '{') open.push({ isList: false, next: null });
    if (token === '[') open.push({ isList: true, next: 0 });
  }
  return text.slice(0, found).split('\n').length;
}

/** Whether a value begins with the token; else the token is a sign or the name of what comes next. */
function isValue(token: string, inner: Open | undefined): boolean {
  if (token === ':' || token === '}' || token === ']') return false;
  if (inner === undefined) return true;
  if (token === ',') {
    inner.next = inner.isList ? Number(inner.next) + 1 : null;
    return false;
  }
  if (inner.next !== null) return true;
  inner.next = JSON.parse(token) as string;
  return false;
}

function pathOf(open: readonly Open[]): string {
  return open
    .map(({ isList, next }) => (isList ? `[${next}]` : `.${next}`))
    .join('')
    .replace(/^\./u, '');
}

/** Whether a path is another or lies on the way to it. */
function leadsTo(here: string, path: string): boolean {
  return here === '' || (path.startsWith(here) && /^(?:$|[.[])/u.test(path.slice(here.length)));
}
