import ts from 'typescript';

/**
 * Rewrites an import declaration so that it can stand inside a test: values become a dynamic
 * import, types an alias.
 */
export function importInsideTest(declaration: ts.ImportDeclaration): string {
  const from = declaration.moduleSpecifier.getText();
  const clause = declaration.importClause;
  if (clause === undefined) return `await import(${from});`;
  const typeOnly = clause.phaseModifier === ts.SyntaxKind.TypeKeyword;
  const bindings = clause.namedBindings;
  if (bindings !== undefined && ts.isNamespaceImport(bindings)) {
    if (typeOnly) throw new Error('import types by name, not by namespace');
    return `const ${bindings.name.text} = await import(${from});`;
  }
  const named = bindings?.elements ?? [];
  const types = named.filter((element) => typeOnly || element.isTypeOnly);
  const values = named.filter((element) => !typeOnly && !element.isTypeOnly);
  const parts = values.map((element) =>
    element.propertyName === undefined
      ? element.name.text
      : `${element.propertyName.text}: ${element.name.text}`,
  );
  if (clause.name !== undefined) parts.unshift(`default: ${clause.name.text}`);
  const value =
    parts.length === 0 ? [] : [`const { ${parts.join(', ')} } = await import(${from});`];
  const aliases = types.map((element) => {
    const exported = (element.propertyName ?? element.name).text;
    return `type ${element.name.text} = import(${from}).${exported};`;
  });
  return [...value, ...aliases].join(' ');
}
