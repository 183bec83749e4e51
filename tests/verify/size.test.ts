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
  const parts = Object.entries(Object.values(metafile.outputs)[0]!.inputs)
    .filter(([, { bytesInOutput }]) => bytesInOutput > 0)
    .sort(([, one], [, other]) => other.bytesInOutput - one.bytesInOutput);
  const made = parts.map(([file, { bytesInOutput }]) => `${file} ${bytesInOutput}`).join(', ');
  return { bytes: gzipSync(outputFiles[0]!.contents, { level: 9 }).length, made };
}

// Bundled from the built package, as an app has it.
describe('size [bytes, gzip]', () => {
  const { gzipBytes } = budgets;
  const within = async (contents: string, budget: number) => {
    const { bytes, made } = await shipped(contents);
    expect(bytes, `${bytes} bytes; before compression: ${made}`).toBeLessThanOrEqual(budget);
  };

  it.each(Object.keys(equations))('one equation, %s', async (name) => {
    await within(`export { ${name} } from 'cuffwork/equations'`, gzipBytes['one equation']);
  });
  it.each([
    ['estimateOcclusionPressure alone', `export { estimateOcclusionPressure } from 'cuffwork'`],
    [
      'estimateOcclusionPressure and targetCuffPressure',
      `export { estimateOcclusionPressure, targetCuffPressure } from 'cuffwork'`,
    ],
    ['all of cuffwork, with decimal.js', `export * from 'cuffwork'`],
    ['planSession, with zod and decimal.js', `export { planSession } from 'cuffwork/plan'`],
    ['all of cuffwork/plan, with zod and decimal.js', `export * from 'cuffwork/plan'`],
  ] as const)('%s', async (what, contents) => {
    await within(contents, gzipBytes[what]);
  });
});
