import { element } from './xml-text.js';

/**
 * Title and a line below it, as they stand over the first page. Without a second line there is none of
 * them: readers print the title of the work by themselves.
 */
export function writeCredits(
  title: string | undefined,
  below: string | undefined,
): readonly string[] {
  if (below === undefined) return [];
  return [
    ...(title === undefined
      ? []
      : [writeCredit('title', title, { 'font-weight': 'bold', 'font-size': 20 })]),
    writeCredit('subtitle', below, { 'font-size': 12 }),
  ];
}

function writeCredit(
  type: 'title' | 'subtitle',
  words: string,
  look: Readonly<Record<string, string | number>>,
): string {
  const place = { justify: 'center', halign: 'center', valign: 'top' };
  return element(
    'credit',
    [element('credit-type', type), element('credit-words', words, { ...place, ...look })],
    {
      page: 1,
    },
  );
}
