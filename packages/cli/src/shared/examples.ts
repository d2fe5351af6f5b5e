/** Help text that closes a verb's help: what to type, one example a line. */
export function examples(...lines: readonly string[]): string {
  return [
    '',
    lines.length === 1 ? 'Example:' : 'Examples:',
    ...lines.map((line) => `  ${line}`),
  ].join('\n');
}
