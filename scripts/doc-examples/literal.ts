import ts from 'typescript';

/** Parses text as one expression; undefined where it is none, or is not finished. */
export function parseExpression(text: string): ts.Expression | undefined {
  const code = `(${text}\n)`;
  const { diagnostics = [] } = ts.transpileModule(code, { reportDiagnostics: true });
  if (diagnostics.length > 0) return undefined;
  const source = ts.createSourceFile('literal.ts', code, ts.ScriptTarget.Latest, true);
  const [statement, ...others] = source.statements;
  if (statement === undefined || others.length > 0) return undefined;
  if (!ts.isExpressionStatement(statement)) return undefined;
  return ts.isParenthesizedExpression(statement.expression)
    ? statement.expression.expression
    : undefined;
}

const PLAIN_WORDS: ReadonlySet<string> = new Set(['undefined', 'NaN', 'Infinity']);
const PLAIN_KINDS: ReadonlySet<ts.SyntaxKind> = new Set([
  ts.SyntaxKind.StringLiteral,
  ts.SyntaxKind.NumericLiteral,
  ts.SyntaxKind.NoSubstitutionTemplateLiteral,
  ts.SyntaxKind.TrueKeyword,
  ts.SyntaxKind.FalseKeyword,
  ts.SyntaxKind.NullKeyword,
]);

/** Whether an expression is data written out: no call, no name, nothing to compute. */
export function isLiteral(node: ts.Expression): boolean {
  if (PLAIN_KINDS.has(node.kind)) return true;
  if (ts.isIdentifier(node)) return PLAIN_WORDS.has(node.text);
  if (ts.isPrefixUnaryExpression(node)) {
    return node.operator === ts.SyntaxKind.MinusToken && isLiteral(node.operand);
  }
  if (ts.isArrayLiteralExpression(node)) return node.elements.every(isLiteral);
  if (!ts.isObjectLiteralExpression(node)) return false;
  return node.properties.every(
    (property) =>
      ts.isPropertyAssignment(property) &&
      isPlainName(property.name) &&
      isLiteral(property.initializer),
  );
}

/** `['__proto__']` is a name like any other; `__proto__` would set the prototype. */
const isPlainName = (name: ts.PropertyName): boolean =>
  !ts.isComputedPropertyName(name) || ts.isStringLiteral(name.expression);

const IDENTIFIER = /^[A-Za-z_$][\w$]*$/u;

/** Writes plain data as a literal on one line, as the code style here would. */
export function writeLiteral(value: unknown): string {
  if (typeof value === 'string') return writeString(value);
  if (Object.is(value, -0)) return '-0';
  if (Array.isArray(value)) return `[${value.map(writeLiteral).join(', ')}]`;
  if (typeof value === 'object' && value !== null) return writeObject(value);
  if (['number', 'boolean', 'undefined'].includes(typeof value) || value === null)
    return `${value}`;
  throw new Error(`an example can show plain data, not a ${typeof value}`);
}

function writeString(text: string): string {
  const escaped = JSON.stringify(text).slice(1, -1).replaceAll('\\"', '"');
  return text.includes("'") && !text.includes('"')
    ? `"${escaped}"`
    : `'${escaped.replaceAll("'", "\\'")}'`;
}

function writeObject(value: object): string {
  const prototype = Object.getPrototypeOf(value);
  if (prototype !== Object.prototype && prototype !== null) {
    throw new Error(`an example can show plain data, not a ${value.constructor.name}`);
  }
  const fields = Object.entries(value)
    .filter(([, field]) => field !== undefined)
    .map(([name, field]) => `${writeName(name)}: ${writeLiteral(field)}`);
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
}

function writeName(name: string): string {
  if (name === '__proto__') return "['__proto__']";
  return IDENTIFIER.test(name) ? name : writeString(name);
}
