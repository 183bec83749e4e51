/*
 * `npm run outputs`: runs every example of README and docs on the built package, and writes what it prints into the block
 * of text after it. tests/project/examples.test.ts compares the committed blocks.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'node:util';
import ts from 'typescript';

const AsyncFunction = (async () => {}).constructor as new (...parts: string[]) => (...args: unknown[]) => Promise<void>;
const importPackage = (name: string): Promise<unknown> => import(name);

async function printed(code: string): Promise<string> {
  const js = code.replace(
    /^import \{([\s\S]*?)\} from '(.*?)';$/gm,
    (_line, names: string, from: string) =>
      `const {${names.replaceAll(/\btype \w+,?/g, '').replaceAll(' as ', ': ')}} = await importPackage('${from}');`,
  );
  const options = { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext };
  let text = '';
  const log = (...values: unknown[]): void => void (text += `${format(...values)}\n`);
  await new AsyncFunction('importPackage', 'console', ts.transpile(js, options))(importPackage, { log });
  return text;
}

const pages = [
  'README.md',
  ...readdirSync('docs', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.md') && !name.startsWith('site'))
    .map((name) => join('docs', name)),
];
for (const page of pages) {
  const before = readFileSync(page, 'utf8');
  let after = before;
  for (const [block, head, code] of before.matchAll(/(```ts\n((?:(?!^```)[\s\S])*)^```\n\n```text\n)[\s\S]*?^```$/gm)) {
    const output = await printed(code!);
    after = after.replace(block, () => `${head}${output}\`\`\``);
  }
  if (after !== before) {
    writeFileSync(page, after);
    console.log(`${page}: outputs written anew`);
  }
}
