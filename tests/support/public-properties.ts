import ts from 'typescript';

/** A property that an editor can show. */
export interface PublicProperty {
  /** `Type.field`. */
  readonly name: string;
  readonly field: string;
  /** `src/plan/types.ts:30` */
  readonly place: string;
  /** Its doc comment as it is written; empty where there is none. */
  readonly comment: string;
  /** Whether you give it: it is part of what a function takes, and not of a document that one made. */
  readonly given: boolean;
  readonly type: string;
}

/** Documents that functions make and take. A request is taken, and returned for the next time. */
const MADE =
  /^(Plan|PlanItem|PlanSet|SessionRecord|ProposalItem|OwnDocument|(Item|Record|Done)Facts|Expanded\w+|RecordItem|ExerciseTotals|FullSet|LighterOption|LimbExposure|SessionEvent|SessionTimeline|Reached\w+|Week(Exercise|Totals|Limb|Occlusion|Sums)|\w*Answer|ComparisonRow)\./;

const entries = ['index', 'plan/index', 'study/index', 'text/index', 'schemas', 'equations'].map(
  (name) => `src/${name}.ts`,
);

/**
 * Every property of the types, functions and classes that an entry point exports, and of every type that these are made
 * from, nested and inherited ones included.
 */
export function publicProperties(): PublicProperty[] {
  const { options } = ts.convertCompilerOptionsFromJson({ target: 'es2022', module: 'nodenext', strict: true }, '.');
  const program = ts.createProgram(entries, options);
  const checker = program.getTypeChecker();

  /** The properties that one way leads to: what is taken, what is returned, or what is named at all. */
  function reached(way: 'taken' | 'returned' | 'named'): Map<ts.Node, string> {
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
      if (ts.isPropertySignature(node) || ts.isPropertyDeclaration(node))
        found.set(node, `${owner}.${node.name.getText()}`);
      if (ts.isTypeReferenceNode(node)) follow(node.typeName);
      if (ts.isExpressionWithTypeArguments(node)) follow(node.expression);
      if (ts.isVariableDeclaration(node)) {
        if (node.initializer) wrapped(node.initializer, owner);
        if (node.type) walk(node.type, owner);
      } else ts.forEachChild(node, (child) => walk(child, owner));
    };
    /** The part of a function that the way leads to. */
    const enter = (node: ts.Node, owner: string): void => {
      if (way === 'named') return walk(node, owner);
      if (ts.isFunctionDeclaration(node) || ts.isFunctionExpression(node) || ts.isArrowFunction(node)) {
        if (way === 'taken') node.parameters.forEach((parameter) => walk(parameter, owner));
        else if (node.type) walk(node.type, owner);
      } else if (ts.isVariableDeclaration(node) && node.initializer) wrapped(node.initializer, owner);
    };
    /** A function that is handed to a wrapper. */
    const wrapped = (node: ts.Node, owner: string): void => {
      if (ts.isFunctionExpression(node) || ts.isArrowFunction(node)) enter(node, owner);
      else if (ts.isIdentifier(node))
        checker.getSymbolAtLocation(node)?.declarations?.forEach((one) => enter(one, owner));
      else if (ts.isCallExpression(node)) node.arguments.forEach((argument) => wrapped(argument, owner));
    };
    const declared = (of: ts.Symbol, first = false): void => {
      const symbol = of.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(of) : of;
      for (const declaration of symbol.declarations ?? []) {
        if (seen.has(declaration) || !/[\\/]src[\\/]/.test(declaration.getSourceFile().fileName)) continue;
        if (ts.isTypeParameterDeclaration(declaration)) continue;
        if (first) {
          enter(declaration, symbol.name);
          continue;
        }
        seen.add(declaration);
        walk(declaration, symbol.name);
      }
    };
    for (const entry of entries) {
      const module = checker.getSymbolAtLocation(program.getSourceFile(entry)!)!;
      for (const symbol of checker.getExportsOfModule(module)) declared(symbol, true);
    }
    return found;
  }

  const [named, taken, returned] = [reached('named'), reached('taken'), reached('returned')];
  return [...named].map(([node, name]) => {
    const file = node.getSourceFile();
    const { line } = file.getLineAndCharacterOfPosition(node.getStart());
    return {
      name,
      field: name.slice(name.lastIndexOf('.') + 1),
      place: `${file.fileName.replace(/.*[\\/](?=src[\\/])/, '')}:${line + 1}`,
      comment: ts
        .getJSDocCommentsAndTags(node)
        .map((comment) => comment.getText())
        .join('\n'),
      given: taken.has(node) && !(returned.has(node) && MADE.test(name)),
      type: (node as ts.PropertySignature).type?.getText() ?? '',
    };
  });
}
