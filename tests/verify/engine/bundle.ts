import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build, type Plugin } from 'esbuild';
import manifest from '../../../package.json' with { type: 'json' };

const HERE = 'tests/verify/engine';

/** Source file of every entry point, and the name a user imports it by. */
const entries = new Map(
  Object.entries(manifest.exports).flatMap(([path, target]) =>
    typeof target === 'object'
      ? [[resolve(target.import.default.replace('./dist/', 'src/').replace(/\.js$/, '.ts')), join('cuffwork', path)]]
      : [],
  ),
);

/** Imports of an entry point’s source become imports of the installed package; vitest becomes the little that runs anywhere. */
const packed: Plugin = {
  name: 'packed',
  setup(builder) {
    builder.onResolve({ filter: /^vitest$/ }, () => ({ path: resolve(HERE, 'expect.ts') }));
    builder.onResolve({ filter: /^\./ }, ({ path, resolveDir }) => {
      const name = entries.get(resolve(resolveDir, path.replace(/\.js$/, '.ts')));
      return name ? { path: name, external: true } : undefined;
    });
  },
};

/** The tests that hold the library to the rows of `src/checks`. */
export const checkTests = readdirSync('tests', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.test.ts') && !name.startsWith('verify'))
  .map((name) => join('tests', name))
  .filter((file) => readFileSync(file, 'utf8').includes('/src/checks/'));

/** Installs the packed package in a fresh folder, with the program that every engine runs beside it. */
export async function freshProject(count: number, seed: number): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'cuffwork-engines-'));
  const run = (args: readonly string[], cwd: string) =>
    execFileSync('npm', args, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
  const [{ filename }] = JSON.parse(run(['pack', '--json', '--pack-destination', folder], resolve('.'))) as [
    { filename: string },
  ];
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ private: true, type: 'module' }));
  run(['install', '--prefer-offline', '--no-audit', '--no-fund', join(folder, filename)], folder);
  await build({
    stdin: {
      contents: `
        import { rows } from 'vitest';
        ${checkTests.map((file) => `import './${file}';`).join('\n')}
        import { answers } from './tests/support/random-answers.ts';
        export async function conform() {
          const failed = [];
          for (const { name, run } of rows) {
            try { await run(); } catch (error) { failed.push(name + ': ' + error); }
          }
          return { rows: rows.length, failed, given: answers(${count}, ${seed}) };
        }`,
      resolveDir: resolve('.'),
      loader: 'ts',
    },
    outfile: join(folder, 'conform.mjs'),
    bundle: true,
    format: 'esm',
    target: 'es2022',
    logLevel: 'error',
    // The tests are imported for what they do; package.json says that no file of the package does anything.
    ignoreAnnotations: true,
    plugins: [packed],
  });
  for (const file of ['freeze.mjs', 'run.mjs', 'run-frozen.mjs', 'page.mjs'])
    copyFileSync(join(HERE, file), join(folder, file));
  return folder;
}
