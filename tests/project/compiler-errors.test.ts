import { resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const plan = `name: 'row', limb: 'arm', restS: 30`;
const lifted = `oneRepMax: 60, percentOneRepMax: 25`;
const sets = `scheme: '30-15-15-15', tempo: '2-0-2-0'`;
const on = `restriction: 'continuous'`;

/** Slips in an exercise of a plan and of a session, with the end of what the compiler says of each. */
const slips: readonly (readonly [slip: string, type: 'PlanExercise' | 'Prescription', code: string, said: RegExp])[] = [
  [
    'a pressure of the rests where the cuff stays as it is',
    'PlanExercise',
    `${plan}, ${lifted}, ${sets}, ${on}, restPercentLop: 20`,
    /property 'restPercentLop' are incompatible.*'number' is not assignable to type 'undefined'/,
  ],
  [
    'no pressure of the rests',
    'PlanExercise',
    `${plan}, ${lifted}, ${sets}, restriction: 'partial'`,
    /'restPercentLop' is missing .* required in type 'CuffLowerInRests'/,
  ],
  [
    'counted without a tempo',
    'PlanExercise',
    `${plan}, ${lifted}, scheme: '30-15-15-15', ${on}`,
    /'tempo' is missing .* required in type 'CountedScheme'/,
  ],
  [
    'a load and a share of a maximum',
    'PlanExercise',
    `${plan}, load: 20, ${lifted}, ${sets}, ${on}`,
    /property 'oneRepMax' are incompatible.*'number' is not assignable to type 'undefined'/,
  ],
  [
    'a share of no maximum',
    'PlanExercise',
    `${plan}, percentOneRepMax: 25, ${sets}, ${on}`,
    /'oneRepMax' is missing .* required in type 'LiftsShareOfMaximum'/,
  ],
  ['a misspelt field', 'PlanExercise', `${plan}, ${lifted}, ${sets}, ${on}, changes: 5`, /'changes' does not exist/],
  [
    'a misspelt word',
    'PlanExercise',
    `${plan}, ${lifted}, ${sets}, restriction: 'continous'`,
    /Did you mean '"continuous"'\?/,
  ],
  [
    'counted without a tempo',
    'Prescription',
    `scheme: '30-15-15-15', ${on}`,
    /'tempo' is missing .* required in type 'CountedScheme'/,
  ],
  [
    'a pressure without a cuff',
    'Prescription',
    `${sets}, restriction: 'none', pressureMmHg: 80`,
    /property 'pressureMmHg' are incompatible/,
  ],
  [
    'sets in notation and one by one',
    'Prescription',
    `${sets}, sets: [{ repetitions: 30 }], ${on}`,
    /property 'sets' are incompatible/,
  ],
];

/** What the compiler says of each slip, one slip a line. */
function complaints(): string[][] {
  const name = resolve('slips.ts');
  const lines = slips.map(([, type, code], index) => `export const slip${index}: ${type} = { ${code} };`);
  const imports = `import type { Prescription } from './src/index.js'; import type { PlanExercise } from './src/plan/index.js';`;
  const code = [imports, ...lines].join('\n');
  const options: ts.CompilerOptions = {
    strict: true,
    exactOptionalPropertyTypes: true,
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    resolveJsonModule: true,
    skipLibCheck: true,
    noEmit: true,
    types: [],
  };
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists } = host;
  host.fileExists = (file) => file === name || fileExists(file);
  host.getSourceFile = (file, how, ...rest) =>
    file === name ? ts.createSourceFile(file, code, how) : getSourceFile(file, how, ...rest);
  const program = ts.createProgram([name], options, host);
  const source = program.getSourceFile(name)!;
  const said = program.getSemanticDiagnostics(source);
  return slips.map((_, index) =>
    said
      .filter(({ start }) => source.getLineAndCharacterOfPosition(start!).line === index + 1)
      .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' ')),
  );
}

describe('what the compiler says of a slip', () => {
  const said = complaints();
  it.each(slips.map(([slip, type, , end], index) => ({ slip, type, end, messages: said[index]! })))(
    'names the field, and lists no long union: $type, $slip',
    ({ end, messages }) => {
      expect(messages).toHaveLength(1);
      expect(messages[0]).toMatch(end);
      // A union that is cut short in the message is one that nobody reads.
      expect(messages[0]).not.toMatch(/\.\.\. \d+ more \.\.\. \|/);
    },
  );
});
