import { recogniseForm } from '@reedplate/form';

// How far charts drawn at random agree with the form they are nearest to: what LEAST_FORM_AGREEMENT must
// lie above. The same draw each time.
//   npx tsx packages/form/scripts/recognise-random.ts

const DRAWS = 60;
const CHORDS = {
  'triads of a key': ['C', 'Dm', 'Em', 'F', 'G', 'Am'],
  'all sevenths': 'C7 Db7 D7 Eb7 E7 F7 F#7 G7 Ab7 A7 Bb7 B7'.split(' '),
} as const;

let state = 1;

/** Linear congruential generator with the constants of ANSI C, value from memory. */
function drawFrom(choices: readonly string[]): string {
  state = (state * 1103515245 + 12345) % 2 ** 31;
  return choices[Math.floor((state / 2 ** 31) * choices.length)] ?? '';
}

for (const bars of [4, 8, 12, 16]) {
  for (const [name, chords] of Object.entries(CHORDS)) {
    const agreements = Array.from({ length: DRAWS }, () => {
      const chart = Array.from({ length: bars }, () => drawFrom(chords));
      return recogniseForm(chart).best[0]?.agreement ?? 0;
    }).sort((a, b) => a - b);
    const at = (share: number) => agreements[Math.ceil(share * DRAWS) - 1]?.toFixed(2);
    console.log(`${bars} bars of ${name}: median ${at(0.5)}, 95 % up to ${at(0.95)}`);
  }
}
