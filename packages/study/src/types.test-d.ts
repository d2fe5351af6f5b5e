import { makeLine } from '@reedplate/line';
import { test } from 'vitest';
import { tuningChanges } from './index.js';

test('misuse does not compile', () => {
  // @ts-expect-error one reed or two
  tuningChanges([makeLine([])], 'standard', { reeds: 3 });
});
