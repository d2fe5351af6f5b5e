/** Lines of a text on one line, blank ones and the space around each left out. */
export function oneLine(text: string): string {
  const lines = text.split('\n').map((line) => line.trim());
  return lines.filter((line) => line !== '').join(' ');
}
