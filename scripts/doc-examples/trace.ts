const GENERATED = /^(?<file>test\/generated\/[\w-]+\.test\.ts)\((?<line>\d+),/u;
const TEST = /^test\("(?<page>.+):(?<first>\d+)"/u;

/**
 * Points a compiler's message about a generated test at the line of documentation behind it;
 * leaves any other message as it is.
 */
export function traceMessage(
  message: string,
  readLines: (file: string) => readonly string[],
): string {
  const { file, line } = GENERATED.exec(message)?.groups ?? {};
  if (file === undefined || line === undefined) return message;
  const lines = readLines(file);
  const heads = lines.slice(0, Number(line)).map((text) => TEST.exec(text)?.groups);
  const at = heads.findLastIndex((head) => head !== undefined);
  const { page, first } = heads[at] ?? {};
  if (page === undefined || first === undefined) return message;
  // The fence's code begins two lines below the test's head, and keeps its lines.
  return `${page}:${Number(first) + Number(line) - 1 - (at + 2)}: ${message}`;
}
