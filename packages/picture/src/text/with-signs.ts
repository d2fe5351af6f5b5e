/**
 * A note, chord or numeral with the signs of music for the letters that stand for them: `Bb7` is
 * `B♭7`, `#ivdim7` is `♯ivdim7`.
 */
export function withSigns(name: string): string {
  return name
    .replace(/##/gu, '♯♯')
    .replace(/#/gu, '♯')
    .replace(/(?<=[A-G])bb|bb(?=\d)/gu, '♭♭')
    .replace(/(?<=[A-G♭])b|b(?=[\dIViv])/gu, '♭');
}
