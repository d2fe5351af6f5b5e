import ts from 'typescript';
import { ROOT } from '../../scripts/lib/root.mjs';

/** A parameter of an exported function, as the compiler sees it. */
interface Parameter {
  readonly name: string;
  /** Whether all that it may hold may be left out, and it may be left out itself. */
  readonly isOptions: boolean;
}

/** A function that an index exports. */
export interface ExportedFunction {
  readonly name: string;
  readonly parameters: readonly Parameter[];
}

/** Every function that a module exports, with its parameters, but for what is internal. */
export function functionsOf(file: string): readonly ExportedFunction[] {
  const index = `${ROOT}${file}`;
  const { config } = ts.readConfigFile(`${ROOT}tsconfig.docs.json`, ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent({ ...config, files: [] }, ts.sys, ROOT);
  const program = ts.createProgram([index], options);
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(index);
  const module = source && checker.getSymbolAtLocation(source);
  if (module === undefined) throw new Error(`${index} is no module`);
  return checker.getExportsOfModule(module).flatMap((exported) => {
    const isAlias = (exported.flags & ts.SymbolFlags.Alias) !== 0;
    const symbol = isAlias ? checker.getAliasedSymbol(exported) : exported;
    const { valueDeclaration } = symbol;
    const isInternal = symbol.getJsDocTags(checker).some(({ name }) => name === 'internal');
    if (valueDeclaration === undefined || isInternal) return [];
    const type = checker.getTypeOfSymbolAtLocation(symbol, valueDeclaration);
    const signature = type.getCallSignatures().at(-1);
    if (signature === undefined) return [];
    const parameters = signature.parameters.map((one) => parameterOf(one, checker));
    return [{ name: exported.name, parameters }];
  });
}

function parameterOf(symbol: ts.Symbol, checker: ts.TypeChecker): Parameter {
  const declaration = symbol.valueDeclaration as ts.ParameterDeclaration;
  const type = checker.getNonNullableType(checker.getTypeOfSymbolAtLocation(symbol, declaration));
  const mayBeLeftOut = checker.isOptionalParameter(declaration);
  const isRecord = (type.flags & (ts.TypeFlags.Object | ts.TypeFlags.Intersection)) !== 0;
  const isNamed = /Options|Details|Spec$/u.test(checker.typeToString(type));
  return { name: symbol.name, isOptions: isNamed || (mayBeLeftOut && isRecord) };
}
