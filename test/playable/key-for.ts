import type { Form } from '@reedplate/form';
import type { KeyName, Tonic } from '@reedplate/pitch';

const SHARP: ReadonlyMap<Tonic, Tonic> = new Map<Tonic, Tonic>([
  ['Db', 'C#'],
  ['Ab', 'G#'],
]);

/** The key of a form on a tonic, by the names that keys have. */
export function keyFor({ mode }: Form, tonic: Tonic): KeyName {
  return (mode === 'major' ? tonic : `${SHARP.get(tonic) ?? tonic}m`) as KeyName;
}
