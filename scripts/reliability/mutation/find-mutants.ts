import ts from 'typescript';

/** One small change of a source file. */
export interface Mutant {
  /** What kind of change. */
  readonly kind: string;
  /** Where the text that is changed begins and ends. */
  readonly from: number;
  readonly to: number;
  /** What stands there instead. */
  readonly text: string;
  /** Where the expression around it begins and ends: whoever computes it meets the change. */
  readonly around: readonly [from: number, to: number];
  /** Line, from 1. */
  readonly line: number;
}

const OPERATORS: ReadonlyMap<ts.SyntaxKind, readonly string[]> = new Map([
  [ts.SyntaxKind.PlusToken, ['-']],
  [ts.SyntaxKind.MinusToken, ['+']],
  [ts.SyntaxKind.AsteriskToken, ['/']],
  [ts.SyntaxKind.SlashToken, ['*']],
  [ts.SyntaxKind.PercentToken, ['*']],
  [ts.SyntaxKind.LessThanToken, ['<=', '>=']],
  [ts.SyntaxKind.LessThanEqualsToken, ['<', '>']],
  [ts.SyntaxKind.GreaterThanToken, ['>=', '<=']],
  [ts.SyntaxKind.GreaterThanEqualsToken, ['>', '<']],
  [ts.SyntaxKind.EqualsEqualsEqualsToken, ['!==']],
  [ts.SyntaxKind.ExclamationEqualsEqualsToken, ['===']],
  [ts.SyntaxKind.AmpersandAmpersandToken, ['||']],
  [ts.SyntaxKind.BarBarToken, ['&&']],
  [ts.SyntaxKind.PlusEqualsToken, ['-=']],
  [ts.SyntaxKind.MinusEqualsToken, ['+=']],
]);

/** Methods that a slip of the pen takes for one another. */
const METHODS: ReadonlyMap<string, string> = new Map([
  ['every', 'some'],
  ['some', 'every'],
  ['min', 'max'],
  ['max', 'min'],
  ['floor', 'ceil'],
  ['ceil', 'floor'],
  ['find', 'findLast'],
  ['findLast', 'find'],
  ['startsWith', 'endsWith'],
]);

/** Every small change of a source, in its order: operators, conditions, numbers, methods, calls left out. */
export function findMutants(file: string, text: string): readonly Mutant[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  const found: Mutant[] = [];
  const add = (kind: string, node: ts.Node, instead: string): void => {
    const from = node.getStart(source);
    const line = source.getLineAndCharacterOfPosition(from).line + 1;
    const outer = expressionAround(node);
    const around = [outer.getStart(source), outer.getEnd()] as const;
    found.push({ kind, from, to: node.getEnd(), text: instead, around, line });
  };
  const visit = (node: ts.Node): void => {
    if (isLeftAlone(node)) return;
    mutate(node, add);
    node.forEachChild(visit);
  };
  visit(source);
  return found;
}

/** The expression whose value a node gives or decides, with all that is called on it in one chain. */
function expressionAround(node: ts.Node): ts.Node {
  if (ts.isExpressionStatement(node)) return node.expression;
  const isPart = ts.isToken(node) && ts.isBinaryExpression(node.parent);
  let outer = isPart && node.parent.operatorToken === node ? node.parent : node;
  while (isChained(outer.parent) && (outer.parent.expression === outer || isName(outer))) {
    outer = outer.parent;
  }
  return outer;
}

const isChained = (node: ts.Node) =>
  ts.isPropertyAccessExpression(node) ||
  ts.isElementAccessExpression(node) ||
  ts.isCallExpression(node) ||
  ts.isNonNullExpression(node);

const isName = (node: ts.Node): boolean =>
  ts.isPropertyAccessExpression(node.parent) && node.parent.name === node;

/** Types do not run, and neither the words of an error nor what stands beside a name in a list are rested on. */
function isLeftAlone(node: ts.Node): boolean {
  return (
    ts.isTypeNode(node) ||
    ts.isInterfaceDeclaration(node) ||
    ts.isTypeAliasDeclaration(node) ||
    ts.isImportDeclaration(node) ||
    ts.isExportDeclaration(node) ||
    ts.isThrowStatement(node) ||
    isListOfNames(node)
  );
}

/** The names of options are the keys of a record; its values say nothing. */
function isListOfNames(node: ts.Node): boolean {
  if (!ts.isVariableDeclaration(node) || node.type === undefined) return false;
  return ts.isTypeReferenceNode(node.type) && node.type.typeName.getText() === 'OptionNames';
}

type Add = (kind: string, node: ts.Node, instead: string) => void;

function mutate(node: ts.Node, add: Add): void {
  if (ts.isBinaryExpression(node)) {
    for (const instead of OPERATORS.get(node.operatorToken.kind) ?? []) {
      add('operator', node.operatorToken, instead);
    }
  }
  const condition = conditionOf(node);
  if (condition !== undefined) {
    for (const instead of ['true', 'false']) add('condition', condition, instead);
  }
  if (ts.isExpressionStatement(node)) add('statement', node, ';');
  mutateValue(node, add);
}

function conditionOf(node: ts.Node): ts.Expression | undefined {
  if (ts.isIfStatement(node)) return node.expression;
  return ts.isConditionalExpression(node) ? node.condition : undefined;
}

const SIGNS = [ts.SyntaxKind.ExclamationToken, ts.SyntaxKind.MinusToken];

function mutateValue(node: ts.Node, add: Add): void {
  if (node.kind === ts.SyntaxKind.TrueKeyword) add('truth', node, 'false');
  if (node.kind === ts.SyntaxKind.FalseKeyword) add('truth', node, 'true');
  if (ts.isPrefixUnaryExpression(node) && SIGNS.includes(node.operator)) {
    add('sign', node, node.operand.getText());
  }
  if (ts.isNumericLiteral(node) && !ts.isPropertyAssignment(node.parent)) {
    add('number', node, `${Number(node.text) + 1}`);
  }
  if (!ts.isPropertyAccessExpression(node) || !ts.isCallExpression(node.parent)) return;
  const instead = METHODS.get(node.name.text);
  if (instead !== undefined) add('method', node.name, instead);
}
