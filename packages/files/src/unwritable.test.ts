import { describe, expect, test } from 'vitest';
import { unwritable } from './unwritable.js';

describe('unwritable', () => {
  test.each([
    ['ENOSPC', 'the disk is full'],
    ['EACCES', 'permission is denied'],
    ['EIO', 'the disk has a fault'],
    ['ENOTDIR', 'its folder is not there'],
    ['EWHATEVER', 'EWHATEVER'],
  ])('unwritable says %s as "%s"', (code, words) => {
    const { message, value } = unwritable('out.mid', Object.assign(new Error(code), { code }));
    expect([message.includes(`(${words})`), value]).toEqual([true, 'out.mid']);
  });

  test('unwritable says unknown of what is no error of the system', () => {
    expect(unwritable('out.mid', 'x').expected).toBe('a file that can be written (unknown)');
  });
});
