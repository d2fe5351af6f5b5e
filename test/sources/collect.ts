import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';

/** Tests in one file that rest on one source. */
export interface Citation {
  readonly file: string;
  readonly source: string;
  /** What is taken from it. */
  readonly facts: string;
}

/** What the files of outside checks cite. */
export interface Citations {
  readonly citations: readonly Citation[];
  /** `file:line` of tests that name no source. */
  readonly withoutSource: readonly string[];
}

/** Files of outside checks, from the root of the workspace. */
export function publishedTests(root: string): readonly string[] {
  return readdirSync(`${root}/packages`)
    .flatMap((name) =>
      readdirSync(`${root}/packages/${name}/src`, { recursive: true, encoding: 'utf8' }).map(
        (file) => `packages/${name}/src/${file}`,
      ),
    )
    .filter((file) => file.endsWith('published.test.ts'))
    .sort();
}

/** Reads every call of `published` from the files of outside checks under a root. */
export function collectCitations(root: string): Citations {
  const citations: Citation[] = [];
  const withoutSource: string[] = [];
  for (const file of publishedTests(root)) {
    const text = readFileSync(`${root}/${file}`, 'utf8');
    const tree = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
    const visit = (node: ts.Node, isCited: boolean): void => {
      const call = ts.isCallExpression(node) ? node : undefined;
      const cited = call === undefined ? undefined : citationOf(call);
      if (cited !== undefined) citations.push({ file, ...cited });
      const isTest = call !== undefined && /^(?:it|test)\b/u.test(call.getText());
      if (isTest && !isCited) {
        const { line } = tree.getLineAndCharacterOfPosition(node.getStart());
        withoutSource.push(`${file}:${line + 1}`);
      } else {
        ts.forEachChild(node, (child) => visit(child, isCited || cited !== undefined));
      }
    };
    visit(tree, false);
  }
  return { citations, withoutSource };
}

/** Ids that tests name and the bibliography lacks, and ids there that no test names. */
export function mismatches(
  citations: readonly Pick<Citation, 'source'>[],
  ids: readonly string[],
): { readonly unknown: readonly string[]; readonly unused: readonly string[] } {
  const named = new Set(citations.map(({ source }) => source));
  const known = new Set(ids);
  return {
    unknown: [...named].filter((id) => !known.has(id)),
    unused: [...known].filter((id) => !named.has(id)),
  };
}

function citationOf(call: ts.CallExpression): Omit<Citation, 'file'> | undefined {
  if (call.expression.getText() !== 'published') return undefined;
  const [source, facts] = call.arguments;
  if (source === undefined || facts === undefined) return undefined;
  if (!ts.isStringLiteralLike(source) || !ts.isStringLiteralLike(facts)) return undefined;
  return { source: source.text, facts: facts.text };
}
