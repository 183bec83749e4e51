import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, type BuildOptions } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it, type TestContext } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import { installEngines, inWorkerd, stored } from './engine/engines.js';

const folder = mkdtempSync(join(tmpdir(), 'cuffwork-recipes-'));
beforeAll(installEngines);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function find(file: string, skip: TestContext['skip']): string {
  const program = stored(file)();
  if (program !== undefined) return program;
  if (process.env['ALLOW_MISSING']) skip(`${file} is missing: not checked, as --allow-missing asks`);
  expect.fail(`${file} is missing; install it, or say --allow-missing`);
}

const bundle = (options: BuildOptions) =>
  build({ bundle: true, target: 'es2022', platform: 'neutral', mainFields: ['module', 'main'], ...options });

describe('the recipe of an edge runtime', () => {
  it('answers in workerd', async ({ skip }) => {
    const program = find('workerd/bin/workerd', skip);
    await bundle({ entryPoints: ['examples/recipes/server-hono.ts'], format: 'esm', outfile: join(folder, 'edge.js') });
    const answer = await inWorkerd(program, folder, 'edge.js', async (url) => {
      const headers = { 'content-type': 'application/json' };
      const body = JSON.stringify({ limb: 'leg', circumferenceCm: 20 });
      const response = await fetch(`${url}/occlusion-pressure`, { method: 'POST', headers, body });
      return { status: response.status, body: (await response.json()) as { issues: { path: string[] }[] } };
    });
    expect(answer.status).toBe(422);
    expect(answer.body.issues[0]?.path).toEqual(['circumferenceCm']);
  });
});

describe('the recipe of React Native', () => {
  it('compiles with the compiler of its engine, every entry point', async ({ skip }) => {
    const program = find('hermes-compiler/hermesc/linux64-bin/hermesc', skip);
    const names = Object.entries(manifest.exports).flatMap(([path, target]) =>
      typeof target === 'object' ? [join('cuffwork', path)] : [],
    );
    expect(names.length).toBeGreaterThan(5);
    await bundle({
      stdin: {
        contents: names
          .map((name, index) => `import * as e${index} from '${name}'; globalThis.e${index} = e${index};`)
          .join('\n'),
        resolveDir: '.',
      },
      format: 'iife',
      outfile: join(folder, 'native.js'),
    });
    const compile = (file: string) =>
      execFileSync(program, ['-O', '-emit-binary', '-out', join(folder, 'native.hbc'), join(folder, file)], {
        stdio: 'pipe',
      });
    compile('native.js');
    // It does refuse what its engine cannot run.
    writeFileSync(join(folder, 'wrong.js'), 'const wrong = /[\\p{L}--[a-z]]/v;');
    expect(() => compile('wrong.js')).toThrow(/regular expression/i);
  });
});
