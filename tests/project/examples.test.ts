import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { format } from 'node:util';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { findingsIn } from '../support/compiled.js';

/** A block of example code: where it stands, and its lines. */
interface Example {
  readonly place: string;
  readonly code: string;
  /** What the page says the code prints: the block of text right after it. */
  readonly output?: string | undefined;
}

const fences = (text: string, place: string): Example[] =>
  [...text.matchAll(/^```(?:ts|js|typescript|javascript)\n([\s\S]*?)^```(?:\n\n```text\n([\s\S]*?)^```)?/gm)].map(
    (match, index) => ({
      place: `${place} #${index + 1}`,
      code: match[1]!,
      output: match[2],
    }),
  );

/** Every doc comment’s text without its stars. */
const comments = (text: string): string =>
  [...text.matchAll(/\/\*\*[\s\S]*?\*\//g)].map(([comment]) => comment.replace(/^\s*\/?\*+[ /]?/gm, '')).join('\n');

const under = (folder: string, ending: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .map((name) => join(folder, name));

const examples: Example[] = [
  ...under('src', '.ts').flatMap((file) => fences(comments(readFileSync(file, 'utf8')), file)),
  ...['README.md', 'DEVELOPERS.md', ...under('docs', '.md')].flatMap((file) =>
    fences(readFileSync(file, 'utf8'), file),
  ),
];

/**
 * `expression; // => value` becomes an assertion that counts itself; imports become imports of the built package.
 */
function runnable(code: string): { js: string; claims: number } {
  let claims = 0;
  const lines = code
    .replace(/^import \{([\s\S]*?)\} from '(.*?)';$/gm, (_line, names: string, from: string) => {
      return `const {${names.replaceAll(/\btype \w+,?/g, '').replaceAll(' as ', ': ')}} = await importPackage('${from}');`;
    })
    .split('\n')
    .map((line) => {
      const claim = /^(\s*)(?!const |\/\/)(.*?);? \/\/ => (.*)$/.exec(line);
      if (!claim && line.includes('; // => ')) throw new Error(`nothing holds this to its value: ${line}`);
      if (!claim) return line;
      claims += 1;
      return `${claim[1]}expect(${claim[2]}).toEqual(${claim[3]});`;
    });
  const js = ts.transpile(lines.join('\n'), { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext });
  return { js, claims };
}

const AsyncFunction = (async () => {}).constructor as new (...parts: string[]) => (...args: unknown[]) => Promise<void>;

// The built package, by its own name: what a reader of the docs imports.
const importPackage = (name: string): Promise<unknown> => import(/* @vite-ignore */ name);

/** What the compiler says of the examples as a reader would type them, in a strict project. */
function complaints(): string[] {
  const files = new Map(examples.map(({ code }, index) => [resolve(`example-${index}.ts`), code]));
  return findingsIn(files).map(({ file, messageText }) => {
    const index = [...files.keys()].indexOf(file?.fileName ?? '');
    return `${examples[index]?.place}: ${ts.flattenDiagnosticMessageText(messageText, ' ')}`;
  });
}

describe('examples in the docs', () => {
  it('compile in a strict project', () => {
    expect(complaints()).toEqual([]);
  });
  it('are found', () => {
    expect(examples.length).toBeGreaterThan(20);
    expect(examples.filter(({ output }) => output !== undefined).length).toBeGreaterThan(1);
  });
  it.each(examples)('$place runs and gives what it says', async ({ code, place, output }) => {
    const { js, claims } = runnable(code);
    expect.assertions(claims + 1 + (output === undefined ? 0 : 1));
    expect(claims > 0 || !place.startsWith('src'), 'an example in a doc comment claims something').toBe(true);
    let printed = '';
    const log = (...values: unknown[]): void => {
      printed += `${format(...values)}\n`;
    };
    await new AsyncFunction('importPackage', 'expect', 'console', js)(importPackage, expect, { log });
    if (output !== undefined) expect(printed).toBe(output);
  });
});
