import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import ts from 'typescript';

const { exports } = JSON.parse(readFileSync('package.json', 'utf8')) as {
  exports: Readonly<Record<string, string | { readonly import?: { readonly types: string } }>>;
};

/** The entry points of the package, as its users import them, and where each begins. */
export const entryPoints: ReadonlyMap<string, string> = new Map(
  Object.entries(exports).flatMap(([path, target]) => {
    const types = typeof target === 'object' ? target.import?.types : undefined;
    return types ? [[`cuffwork${path.slice(1)}`, types.replace('./dist', 'src').replace('.d.ts', '.ts')]] : [];
  }),
);

/** A name that the package exports, with its doc comment. */
export interface PublicName {
  readonly entry: string;
  readonly name: string;
  readonly kind: 'function' | 'value' | 'type';
  /** File of its declaration. */
  readonly file: string;
  /** The doc comment without its stars; empty where there is none. */
  readonly comment: string;
  /** The first paragraph of the comment, as one line. */
  readonly summary: string;
  /** How it is called, of a function. */
  readonly signature: string;
  readonly parameters: readonly { readonly name: string; readonly type: string; readonly comment: string }[];
  /** Fields of what it returns, of a function. */
  readonly returns: readonly string[];
}

const bare = (comment: string): string =>
  comment
    .replace(/^\/\*\*|\*\/$/g, '')
    .replace(/^ *\* ?/gm, '')
    .trim();

/** Every name that the entry points export, in the order of their names. */
export function publicNames(): PublicName[] {
  const { config } = ts.readConfigFile('tsconfig.json', (file) => readFileSync(file, 'utf8')) as {
    config: { compilerOptions: object };
  };
  const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, '.');
  const program = ts.createProgram([...entryPoints.values()], options);
  const checker = program.getTypeChecker();

  const describe = (entry: string, exported: ts.Symbol): PublicName => {
    const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
    const declaration = symbol.declarations![0]!;
    const source = declaration.getSourceFile();
    // The doc comment of a constant is before its statement.
    const holder = ts.isVariableDeclaration(declaration) ? declaration.parent.parent : declaration;
    const before = ts.getLeadingCommentRanges(source.text, holder.getFullStart()) ?? [];
    const block = before.map(({ pos, end }) => source.text.slice(pos, end)).filter((text) => text.startsWith('/**'));
    const comment = bare(block.at(-1)?.includes('@module') ? '' : (block.at(-1) ?? ''));
    const isType = !(symbol.flags & ts.SymbolFlags.Value);
    const call = isType ? undefined : checker.getTypeOfSymbol(symbol).getCallSignatures()[0];
    // Of a function that carries its schema, the words for the parameters stand before the statement too.
    const tags = new Map(
      ts.getJSDocTags(holder).flatMap((tag) => {
        if (!ts.isJSDocParameterTag(tag)) return [];
        const words = ts.getTextOfJSDocComment(tag.comment) ?? '';
        return [[tag.name.getText(), words.replace(/^- /, '')] as const];
      }),
    );
    return {
      entry,
      name: exported.name,
      kind: isType ? 'type' : call ? 'function' : 'value',
      file: relative('.', source.fileName),
      comment,
      summary: comment.split(/\n\s*\n|\n@/)[0]!.replaceAll(/\s*\n\s*/g, ' '),
      signature: call ? exported.name + checker.signatureToString(call) : '',
      parameters: (call?.parameters ?? []).map((parameter) => ({
        name: parameter.name,
        type: checker.typeToString(checker.getTypeOfSymbol(parameter)),
        comment: tags.get(parameter.name) ?? '',
      })),
      returns: (call ? checker.getPropertiesOfType(call.getReturnType()) : []).map(({ name }) => name),
    };
  };

  return [...entryPoints].flatMap(([entry, file]) => {
    const module = checker.getSymbolAtLocation(program.getSourceFile(file)!)!;
    return checker
      .getExportsOfModule(module)
      .map((exported) => describe(entry, exported))
      .sort((a, b) => (a.name < b.name ? -1 : 1));
  });
}
