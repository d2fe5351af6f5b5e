import ts from 'typescript';

/** A regular expression of a source file. */
export interface FoundExpression {
  readonly source: string;
  readonly flags: string;
  /** File and line, from 1. */
  readonly place: string;
}

/** What a file holds of regular expressions. */
export interface FoundExpressions {
  /** Those written as literals. */
  readonly literals: readonly FoundExpression[];
  /** Places where one is made of text when the program runs. */
  readonly made: readonly string[];
}

/** Finds the regular expressions of a TypeScript file. */
export function gatherExpressions(file: string, text: string): FoundExpressions {
  const literals: FoundExpression[] = [];
  const made: string[] = [];
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const placeOf = (node: ts.Node): string =>
    `${file}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1}`;
  const visit = (node: ts.Node): void => {
    if (ts.isRegularExpressionLiteral(node)) {
      const end = node.text.lastIndexOf('/');
      literals.push({
        source: node.text.slice(1, end),
        flags: node.text.slice(end + 1),
        place: placeOf(node),
      });
    }
    const isCall = ts.isNewExpression(node) || ts.isCallExpression(node);
    if (isCall && node.expression.getText() === 'RegExp') made.push(placeOf(node));
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { literals, made };
}
