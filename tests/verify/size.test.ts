import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import * as equations from '../../src/equations.js';
import budgets from './budgets.json' with { type: 'json' };

/** What an app ships for an import of the built package, bundled and compressed, and what it is made of. */
async function shipped(contents: string): Promise<{ bytes: number; made: string }> {
  const { outputFiles, metafile } = await build({
    stdin: { contents, resolveDir: process.cwd() },
    bundle: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
    write: false,
    metafile: true,
  });
  const parts = Object.entries(Object.values(metafile.outputs)[0]!.inputs);
  const byFolder = new Map<string, number>();
  for (const [file, { bytesInOutput }] of parts) {
    const [, folder] = /(node_modules\/[^/]+|src\/[^/]+)/.exec(file) ?? [];
    if (folder) byFolder.set(folder, (byFolder.get(folder) ?? 0) + bytesInOutput);
  }
  const largest = [...byFolder].sort(([, a], [, b]) => b - a).map(([folder, bytes]) => `${folder} ${bytes}`);
  return { bytes: gzipSync(outputFiles[0]!.contents, { level: 9 }).length, made: largest.join(', ') };
}

// Bundled from the sources: the built package is the same code, one file a module, and the parts keep their names.
describe('size [bytes, gzip]', () => {
  const { gzipBytes } = budgets;
  const within = async (contents: string, budget: number) => {
    const { bytes, made } = await shipped(contents);
    expect(bytes, `${bytes} bytes; before compression: ${made}`).toBeLessThanOrEqual(budget);
    return bytes;
  };

  it.each(Object.keys(equations))('one equation, %s', async (name) => {
    await within(`export { ${name} } from 'cuffwork/equations'`, gzipBytes['one equation']);
  });
  it.each([
    ['estimateOcclusionPressure alone', `export { estimateOcclusionPressure } from './src/index.ts'`],
    [
      'estimateOcclusionPressure and targetCuffPressure',
      `export { estimateOcclusionPressure, targetCuffPressure } from './src/index.ts'`,
    ],
    ['all of cuffwork, with decimal.js', `export * from './src/index.ts'`],
    ['planSession, with zod and decimal.js', `export { planSession } from './src/plan/index.ts'`],
    ['all of cuffwork/plan, with zod and decimal.js', `export * from './src/plan/index.ts'`],
  ] as const)('%s', async (what, contents) => {
    await within(contents, gzipBytes[what]);
  });
  it('the built package ships as little as its sources', async () => {
    const one = `export { estimateOcclusionPressure } from`;
    const [built, source] = [await shipped(`${one} 'cuffwork'`), await shipped(`${one} './src/index.ts'`)];
    // Its shared files are built for every import, so a little more of them stays.
    expect(built.bytes).toBeLessThanOrEqual(source.bytes * 1.06);
  });
});
