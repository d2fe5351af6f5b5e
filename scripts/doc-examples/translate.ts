import ts from 'typescript';
import { importInsideTest } from './imports.js';
import { type Marker, markerAfter, markerLikeComments } from './markers.js';

/** A fence made into the body of a test. */
export interface Translation {
  readonly body: string;
  /** Every claim of the fence; the body refers to each by its place in this list. */
  readonly markers: readonly Marker[];
}

interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/**
 * Makes the code of a fence into the body of a test: `expression; // => literal` becomes an
 * equality and `expression; // throws CODE` an expected error, at any depth. `$example` in the
 * body is the runtime's.
 */
export function translate(code: string): Translation {
  const { diagnostics = [] } = ts.transpileModule(code, { reportDiagnostics: true });
  if (diagnostics[0] !== undefined) {
    throw new Error(ts.flattenDiagnosticMessageText(diagnostics[0].messageText, '\n'));
  }
  const source = ts.createSourceFile('fence.ts', code, ts.ScriptTarget.Latest, true);
  const markers: Marker[] = [];
  const edits: Edit[] = [];
  const visit = (node: ts.Node): void => {
    const edit = editOf(node, source, markers);
    if (edit !== undefined) edits.push(edit);
    else ts.forEachChild(node, visit);
  };
  visit(source);
  refuseLooseMarkers(source, markers);
  return { body: applyEdits(code, edits), markers };
}

function editOf(node: ts.Node, source: ts.SourceFile, markers: Marker[]): Edit | undefined {
  if (ts.isImportDeclaration(node)) return replace(node, importInsideTest(node));
  if (ts.isExportDeclaration(node) || ts.isExportAssignment(node)) {
    throw new Error('an example cannot export');
  }
  if (!ts.isExpressionStatement(node) && !ts.isVariableStatement(node)) return undefined;
  const marker = markerAfter(node, source);
  if (marker === undefined) return undefined;
  const number = markers.push(marker) - 1;
  const claim = ts.isVariableStatement(node)
    ? claimOfVariable(node, marker, number)
    : claimOfExpression(node.expression, marker, number);
  return replace(
    node,
    ts.isBlock(node.parent) || ts.isSourceFile(node.parent) ? claim : `{ ${claim} }`,
  );
}

const replace = (node: ts.Node, text: string): Edit => ({
  start: node.getStart(),
  end: node.getEnd(),
  text,
});

function claimOfExpression(expression: ts.Expression, marker: Marker, number: number): string {
  const text = expression.getText();
  if (marker.kind === 'equals') return `$example.equals(${number}, ${text}, ${marker.literal});`;
  return awaits(expression)
    ? `await $example.rejects(${number}, async () => (${text}), '${marker.code}');`
    : `$example.throws(${number}, () => (${text}), '${marker.code}');`;
}

function claimOfVariable(statement: ts.VariableStatement, marker: Marker, number: number): string {
  const [declaration, ...others] = statement.declarationList.declarations;
  if (declaration?.initializer === undefined || others.length > 0) {
    throw new Error('a claim needs one variable with a value before it');
  }
  if (marker.kind === 'throws') return claimOfExpression(declaration.initializer, marker, number);
  if (!ts.isIdentifier(declaration.name)) throw new Error('a claim cannot follow a destructuring');
  const { text } = declaration.name;
  return `${statement.getText()} $example.equals(${number}, ${text}, ${marker.literal});`;
}

/** Whether an expression awaits, other than inside a function of its own. */
function awaits(node: ts.Node): boolean {
  if (ts.isAwaitExpression(node)) return true;
  if (ts.isFunctionLike(node)) return false;
  return ts.forEachChild(node, awaits) ?? false;
}

/** A claim that no statement owns would never be checked. */
function refuseLooseMarkers(source: ts.SourceFile, markers: readonly Marker[]): void {
  const claimed = new Set(markers.flatMap((marker) => marker.claimed));
  const loose = markerLikeComments(source).find((offset) => !claimed.has(offset));
  if (loose === undefined) return;
  const { line } = source.getLineAndCharacterOfPosition(loose);
  throw new Error(`no statement owns the claim in line ${line + 1} of the fence`);
}

function applyEdits(code: string, edits: readonly Edit[]): string {
  let result = code;
  for (const { start, end, text } of [...edits].sort((a, b) => b.start - a.start)) {
    result = result.slice(0, start) + text + result.slice(end);
  }
  return result;
}
