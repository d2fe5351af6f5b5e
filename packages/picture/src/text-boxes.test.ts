import { describe, expect, it } from 'vitest';
import { textComplaints } from './text-boxes.fixture.js';

const svg = (body: string): string => `<svg viewBox="0 0 100 50">${body}</svg>`;

describe('textComplaints', () => {
  it('textComplaints finds texts that meet, leave the picture or are small', () => {
    const a = '<text x="10" y="20" font-size="12" fill="#000000">abc</text>';
    expect(textComplaints(svg(a))).toEqual([]);
    expect(textComplaints(svg(a + a.replace('10', '20')))).toEqual(['"abc" meets "abc"']);
    expect(textComplaints(svg(a.replace('10', '90')))).toEqual(['"abc" leaves the picture']);
    expect(textComplaints(svg(a.replace('"20"', '"5"')))).toEqual(['"abc" leaves the picture']);
    expect(textComplaints(svg(a.replace('"12"', '"9"')))).toEqual(['"abc" is set in 9 px']);
  });

  it('textComplaints reads anchors', () => {
    const end = '<text x="95" y="20" font-size="12" fill="#000000" text-anchor="end">abc</text>';
    expect(textComplaints(svg(end))).toEqual([]);
    expect(textComplaints(svg(end.replace('"end"', '"middle"')))).toEqual([
      '"abc" leaves the picture',
    ]);
  });
});
