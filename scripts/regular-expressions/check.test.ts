import { describe, expect, test } from 'vitest';
import { checkExpression } from './check.js';

const statusOf = (source: string): string =>
  checkExpression({ source, flags: 'u', place: '' }).status;

describe('checkExpression', () => {
  test('checkExpression finds the expression that once held a Q: field for minutes', () => {
    expect(statusOf(String.raw`^((?:\d{1,3}\/\d{1,3}\s*)+)=\s*(\d{1,4})$`)).toBe('vulnerable');
  });

  test('checkExpression finds quadratic time too, and passes what is linear', () => {
    expect(statusOf(String.raw`\s*\n\s*x`)).toBe('vulnerable');
    expect(statusOf(String.raw`^\d{1,3}\/\d{1,3}$`)).toBe('safe');
  });
});
