import { expect, test } from 'vitest';
import { rewriteClaims } from './update.js';

test('rewriteClaims writes a literal anew and leaves the rest of the file as it was', () => {
  const page = ' * a(); // => 1\n * b(); // => [\n * //   1,\n * // ]\n * c(); // => 3\n';
  const updates = [
    { firstLine: 1, lastLine: 1, literal: '10' },
    { firstLine: 2, lastLine: 4, literal: '[1, 2]' },
    { firstLine: 5, lastLine: 5, literal: "'x'" },
  ];
  expect(rewriteClaims(page, updates)).toBe(
    " * a(); // => 10\n * b(); // => [1, 2]\n * c(); // => 'x'\n",
  );
});
