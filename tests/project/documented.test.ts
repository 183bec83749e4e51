import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const entries = ['index', 'plan/index', 'study/index', 'text/index', 'schemas', 'equations'].map(
  (name) => `src/${name}.ts`,
);
const { options } = ts.convertCompilerOptionsFromJson({ target: 'es2022', module: 'nodenext', strict: true }, '.');
const program = ts.createProgram(entries, options);
const checker = program.getTypeChecker();

/**
 * Every property that an editor can show: of the types, functions and classes that an entry point exports, and of every
 * type that these are made from, nested and inherited ones included.
 */
function properties(): Map<ts.Node, string> {
  const found = new Map<ts.Node, string>();
  const seen = new Set<ts.Node>();
  const follow = (name: ts.Node): void => {
    const symbol = checker.getSymbolAtLocation(name);
    if (symbol) declared(symbol);
  };
  const walk = (node: ts.Node, owner: string): void => {
    // What a function does is nobody’s interface; nor is what a class keeps to itself.
    if (ts.isBlock(node)) return;
    if (ts.isClassElement(node) && ts.getCombinedModifierFlags(node) & ts.ModifierFlags.Private) return;
    const shown = ts.isPropertySignature(node) || ts.isPropertyDeclaration(node);
    if (shown) found.set(node, `${owner}.${node.name.getText()}`);
    if (ts.isTypeReferenceNode(node)) follow(node.typeName);
    if (ts.isExpressionWithTypeArguments(node)) follow(node.expression);
    if (ts.isVariableDeclaration(node) && node.initializer) walkCalls(node.initializer, owner);
    const inside = ts.isVariableDeclaration(node) ? node.type : node;
    if (inside === node) ts.forEachChild(node, (child) => walk(child, owner));
    else if (inside) walk(inside, owner);
  };
  /** A function that is handed to a wrapper has its parameters there. */
  const walkCalls = (node: ts.Node, owner: string): void => {
    if (ts.isFunctionExpression(node) || ts.isArrowFunction(node)) walk(node, owner);
    else if (ts.isCallExpression(node)) node.arguments.forEach((argument) => walkCalls(argument, owner));
  };
  const declared = (of: ts.Symbol): void => {
    const symbol = of.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(of) : of;
    for (const declaration of symbol.declarations ?? []) {
      if (seen.has(declaration) || !/[\\/]src[\\/]/.test(declaration.getSourceFile().fileName)) continue;
      if (ts.isTypeParameterDeclaration(declaration)) continue;
      seen.add(declaration);
      walk(declaration, symbol.name);
    }
  };
  for (const entry of entries) {
    const module = checker.getSymbolAtLocation(program.getSourceFile(entry)!)!;
    checker.getExportsOfModule(module).forEach(declared);
  }
  return found;
}

describe('public properties', () => {
  it('have words, every one', () => {
    const all = properties();
    expect(all.size).toBeGreaterThan(1300);
    const bare = [...all].flatMap(([node, name]) => {
      if (ts.getJSDocCommentsAndTags(node).length > 0) return [];
      const file = node.getSourceFile();
      return [
        `${file.fileName.replace(/.*src/, 'src')}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1} ${name}`,
      ];
    });
    expect(bare).toEqual([]);
  }, 60_000);
});
