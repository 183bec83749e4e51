import ts from 'typescript';

/** What the compiler finds wrong in files that are not on disk, as a strict project sees them: each finding with its file. */
export function findingsIn(texts: ReadonlyMap<string, string>): readonly ts.Diagnostic[] {
  const options: ts.CompilerOptions = {
    strict: true,
    exactOptionalPropertyTypes: true,
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    moduleDetection: ts.ModuleDetectionKind.Force,
    resolveJsonModule: true,
    noEmit: true,
    // The declarations themselves are checked in the packed package.
    skipLibCheck: true,
    types: [],
  };
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists } = host;
  host.fileExists = (path) => texts.has(path) || fileExists(path);
  host.getSourceFile = (path, how, ...rest) => {
    const text = texts.get(path);
    return text === undefined ? getSourceFile(path, how, ...rest) : ts.createSourceFile(path, text, how);
  };
  const program = ts.createProgram([...texts.keys()], options, host);
  return [...texts.keys()].flatMap((path) => {
    const source = program.getSourceFile(path);
    return [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)];
  });
}
