import ts from 'typescript';
import { isLiteral, parseExpression } from './literal.js';

/** What a comment claims of the statement before it. */
export type Marker = {
  /** Offsets in the code of the comments that make up the claim. */
  readonly claimed: readonly number[];
  /** Lines of the code, from 0, first and last, that the claim stands on. */
  readonly firstLine: number;
  readonly lastLine: number;
} & (
  | { readonly kind: 'equals'; readonly literal: string }
  | { readonly kind: 'throws'; readonly code: string }
);

const EQUALS = /^\/\/ ?=>/u;
const THROWS = /^\/\/ ?throws (?<code>[A-Z][A-Z0-9_]*)$/u;
const LOOKS_LIKE_MARKER = /^\/\/\s*(?:=>|throws\b)/u;

/** The claim that follows a statement, on its last line or on the lines right below. */
export function markerAfter(statement: ts.Statement, source: ts.SourceFile): Marker | undefined {
  const comments = commentsAfter(statement.end, source);
  const [first] = comments;
  if (first === undefined) return undefined;
  const lineOf = (offset: number): number => source.getLineAndCharacterOfPosition(offset).line;
  const code = THROWS.exec(textOf(first, source))?.groups?.code;
  if (code !== undefined) {
    const line = lineOf(first.pos);
    return { kind: 'throws', code, claimed: [first.pos], firstLine: line, lastLine: line };
  }
  if (!EQUALS.test(textOf(first, source))) return undefined;
  const used = finishedLiteral(comments, source);
  const claimed = used.comments.map((comment) => comment.pos);
  const lastLine = lineOf(claimed.at(-1) ?? first.pos);
  return { kind: 'equals', literal: used.literal, claimed, firstLine: lineOf(first.pos), lastLine };
}

function commentsAfter(end: number, source: ts.SourceFile): readonly ts.CommentRange[] {
  const trailing = ts.getTrailingCommentRanges(source.text, end) ?? [];
  const below = ts.getLeadingCommentRanges(source.text, end) ?? [];
  const all = new Map([...trailing, ...below].map((comment) => [comment.pos, comment]));
  return [...all.values()].sort((a, b) => a.pos - b.pos);
}

const textOf = (comment: ts.CommentRange, source: ts.SourceFile): string =>
  source.text.slice(comment.pos, comment.end).trimEnd();

/** A literal may run on over several comment lines; it ends with the line that completes it. */
function finishedLiteral(comments: readonly ts.CommentRange[], source: ts.SourceFile) {
  let literal = '';
  for (const [index, comment] of comments.entries()) {
    literal += `${textOf(comment, source)
      .replace(index === 0 ? EQUALS : /^\/\//u, '')
      .trim()} `;
    const expression = parseExpression(literal);
    if (expression === undefined) continue;
    if (!isLiteral(expression)) break;
    return { literal: literal.trim(), comments: comments.slice(0, index + 1) };
  }
  throw new Error(`not a literal after =>: ${literal.trim()}`);
}

/** Comments that look like a claim, wherever they stand. */
export function markerLikeComments(source: ts.SourceFile): readonly number[] {
  const found = new Set<number>();
  const visit = (node: ts.Node): void => {
    const around = [
      ...(ts.getLeadingCommentRanges(source.text, node.getFullStart()) ?? []),
      ...(ts.getTrailingCommentRanges(source.text, node.getEnd()) ?? []),
    ];
    for (const comment of around) {
      if (LOOKS_LIKE_MARKER.test(textOf(comment, source))) found.add(comment.pos);
    }
    for (const child of node.getChildren(source)) visit(child);
  };
  visit(source);
  return [...found];
}
