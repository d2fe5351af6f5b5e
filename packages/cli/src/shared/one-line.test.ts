import { describe, expect, test } from 'vitest';
import { oneLine } from './one-line.js';

describe('oneLine', () => {
  test('oneLine joins lines with one space, and leaves space within a line', () => {
    expect(oneLine('  no  such key \r\n\n (Did you mean G?)\n')).toBe(
      'no  such key (Did you mean G?)',
    );
    expect(oneLine('')).toBe('');
  });
});
