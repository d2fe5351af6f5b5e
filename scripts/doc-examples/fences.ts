import ts from 'typescript';

/** A fenced block of TypeScript found in a docstring or a Markdown page. */
export interface Fence {
  readonly file: string;
  /** Line of the file, from 1, on which the code begins. */
  readonly line: number;
  readonly code: string;
  /** False where the fence is marked `no-run`. */
  readonly runs: boolean;
}

interface NumberedLine {
  readonly line: number;
  readonly text: string;
}

/** Finds every TypeScript fence of a file, by the rules of its kind: Markdown or TypeScript. */
export function findFences(file: string, text: string): readonly Fence[] {
  if (file.endsWith('.md')) return fencesIn(file, numberLines(text));
  return docComments(file, text).flatMap((comment) => fencesIn(file, comment));
}

function numberLines(text: string, first = 1): NumberedLine[] {
  return text.split('\n').map((line, index) => ({ line: first + index, text: line }));
}

/** The lines of each doc comment, without the stars, in the order they stand. */
function docComments(file: string, text: string): NumberedLine[][] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const starts = new Map<number, string>();
  const visit = (node: ts.Node): void => {
    for (const part of ts.getJSDocCommentsAndTags(node)) {
      if (ts.isJSDoc(part)) starts.set(part.getStart(), part.getText());
    }
    for (const child of node.getChildren()) visit(child);
  };
  visit(source);
  return [...starts]
    .sort(([a], [b]) => a - b)
    .map(([start, comment]) => {
      const { line } = source.getLineAndCharacterOfPosition(start);
      return numberLines(comment, line + 1).map(withoutStar);
    });
}

function withoutStar({ line, text }: NumberedLine): NumberedLine {
  return { line, text: text.replace(/^\s*\/?\*+ ?/u, '').replace(/\*\/$/u, '') };
}

const FENCE = /^\s*(?<mark>`{3,}|~{3,})\s*(?<language>[\w-]*)(?<flags>.*)$/u;

function fencesIn(file: string, lines: readonly NumberedLine[]): Fence[] {
  const fences: Fence[] = [];
  let open: { readonly mark: string; readonly fence: Fence; readonly wanted: boolean } | undefined;
  let code: string[] = [];
  for (const { line, text } of lines) {
    const { mark, language = '', flags = '' } = FENCE.exec(text)?.groups ?? {};
    if (open === undefined && mark !== undefined) {
      const runs = !flags.split(/\s+/u).includes('no-run');
      const wanted = language === 'ts' || language === 'typescript';
      open = { mark, wanted, fence: { file, line: line + 1, code: '', runs } };
      code = [];
    } else if (open !== undefined && mark?.startsWith(open.mark) && language === '') {
      if (open.wanted) fences.push({ ...open.fence, code: code.join('\n') });
      open = undefined;
    } else if (open !== undefined) {
      code.push(text);
    }
  }
  if (open !== undefined) throw new Error(`${file}:${open.fence.line - 1}: fence is never closed`);
  return fences;
}
