import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { declarations } from '../../docs/tools/json-schemas.js';
import manifest from '../../package.json' with { type: 'json' };

const EXPECTED = '160 75 cuffwork/plan ok';

const body = `
const lop = estimateOcclusionPressure({
  limb: 'leg', circumferenceCm: 54, systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 10, posture: 'supine',
  equation: 'width-ratio-1993',
});
const plan = planSession({
  systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
  limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percentLop: 50 }],
  exercises: [{
    name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percentOneRepMax: 25, step: 2.5,
    scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous',
  }],
});
const rows = columns({
  answer: 'occlusion-pressure', equation: 'width-ratio-1993', limb: 'leg', circumferenceCm: new Float64Array([54, 60]),
  systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 10, posture: 'supine',
});
const explained = explain(lop).startsWith('Limb occlusion pressure');
const same = explained && rows.value[0] === lop.value && widthRatio(54, 120, 70, 10) === lop.value && typeof planSchema['~standard'].validate === 'function';
console.log(lop.value, plan.items[0]?.totals.repetitions.value, 'cuffwork/plan', same ? 'ok' : 'not the same');
`;
const esm = `
import { estimateOcclusionPressure } from 'cuffwork';
import { widthRatio } from 'cuffwork/equations';
import { planSession } from 'cuffwork/plan';
import { planSchema } from 'cuffwork/schemas';
import { columns } from 'cuffwork/study';
import { explain } from 'cuffwork/explain';
${body}`;
const cjs = `
const { estimateOcclusionPressure } = require('cuffwork');
const { widthRatio } = require('cuffwork/equations');
const { planSession } = require('cuffwork/plan');
const { planSchema } = require('cuffwork/schemas');
const { columns } = require('cuffwork/study');
const { explain } = require('cuffwork/explain');
${body}`;

describe('the packed package in a fresh project', () => {
  const project = mkdtempSync(join(tmpdir(), 'cuffwork-'));
  const run = (command: string, args: readonly string[], cwd = project) => {
    const { status, stdout, stderr } = spawnSync(command, args, { cwd, encoding: 'utf8' });
    // A compiler says on stdout what is wrong.
    if (status !== 0) throw new Error(`${command} ${args.join(' ')}\n${stdout}${stderr}`);
    return stdout.trim();
  };
  /** The files of packages that requiring an entry point loads. */
  const loaded = (entry: string) =>
    run('node', ['-e', `require('${entry}'); console.log(Object.keys(require.cache).join('\\n'))`]);
  /** The declarations, of entry points or of what these share, in which something stands. */
  const declaring = (what: RegExp) => {
    const home = join(project, 'node_modules/cuffwork/dist');
    return readdirSync(home, { recursive: true, encoding: 'utf8' }).filter(
      (file) => /\.d\.c?ts$/.test(file) && what.test(readFileSync(join(home, file), 'utf8')),
    );
  };

  interface Packed {
    readonly filename: string;
    readonly unpackedSize: number;
    readonly files: readonly { readonly path: string }[];
  }
  let packed: Packed;

  beforeAll(() => {
    [packed] = JSON.parse(run('npm', ['pack', '--json', '--pack-destination', project], resolve('.'))) as [Packed];
    writeFileSync(join(project, 'package.json'), JSON.stringify({ name: 'fresh', private: true }));
    run('npm', ['install', '--prefer-offline', '--no-audit', '--no-fund', join(project, packed.filename)]);
  }, 300_000);
  afterAll(() => rmSync(project, { recursive: true, force: true }));

  it('holds what is built, the check values and the guides, in at most 3.58 MB', () => {
    for (const { path } of packed.files)
      expect(path).toMatch(
        /^(dist\/|docs\/((course|stories)\/)?[\w-]+\.(md|txt)$|docs\/pictures\/|examples\/(athlete\.mjs|from-json\.mjs|from-r\.R|from_python\.py|legs\.csv)$|package\.json|(README|CHANGELOG|DEVELOPERS)\.md|LICENSE|CITATION\.cff)/,
      );
    expect(packed.unpackedSize).toBeLessThanOrEqual(3_580_000);
    // One set of types, none of them of a JSON file; ESM and CommonJS once each.
    const built = packed.files.map(({ path }) => path).filter((path) => path.startsWith('dist/'));
    for (const path of built.filter((path) => path.endsWith('.d.ts')))
      expect(readFileSync(join(project, 'node_modules/cuffwork', path), 'utf8')).toMatch(
        /^export \* from '\.\/\w+\.cjs';\n$/,
      );
    expect(built.filter((path) => path.includes('schemas/') && !path.endsWith('.json'))).toEqual([]);
    // “Go to definition” leads to a file with the name of its source.
    const sourceOf = (path: string) => path.replace('dist/', 'src/').replace('.d.cts', '.ts');
    expect(built.filter((path) => path.endsWith('.d.cts') && !existsSync(sourceOf(path)))).toEqual([
      'dist/answer/standard-schema.d.cts',
    ]);
    expect(built.filter((path) => /[A-Z\d]{8}\.c?js$/.test(path))).toEqual([]);
    for (const path of built)
      expect(path).toMatch(/\.d\.c?ts$|\.c?js$|^dist\/(schemas|checks|text\/locales)\/.*\.json$/);
  });

  it('follows the links of its README and guides to files that are in it', () => {
    const home = join(project, 'node_modules/cuffwork');
    const pages = packed.files
      .map(({ path }) => path)
      .filter((path) => /^(README|docs\/((course|maintainers)\/)?[\w-]+)\.md$/.test(path));
    expect(pages.length).toBeGreaterThan(10);
    const broken = pages.flatMap((page) =>
      [...readFileSync(join(home, page), 'utf8').matchAll(/\]\(([^)#\s]+)[^)]*\)/g)]
        .map(([, link]) => link!)
        // Scripts and the notebook that a guide was made by stay in the repository.
        .filter(
          (link) =>
            !/^[a-z]+:|^working\/|notebook\/|\/tests\//.test(link) && !existsSync(join(home, dirname(page), link)),
        )
        .map((link) => `${page}: ${link}`),
    );
    expect(broken).toEqual([]);
  });

  it.each([
    ['ESM', 'wrong.mjs', `import { planSession } from 'cuffwork/plan';`],
    ['CommonJS', 'wrong.cjs', `const { planSession } = require('cuffwork/plan');`],
  ])('prints an uncaught InputError from its message on, and its stack from the call: %s', (_kind, file, start) => {
    writeFileSync(join(project, file), `${start}\nfunction yours() {\n  planSession({ limbs: 1 });\n}\nyours();\n`);
    const { status, stderr } = spawnSync('node', [file], { cwd: project, encoding: 'utf8' });
    expect(status).not.toBe(0);
    // Node shows the line that threw before the message: a line, and not a file on one line.
    expect(stderr.slice(0, 500)).toMatch(/^InputError: /m);
    expect(stderr).toContain('systolicMmHg is missing');
    const frames = stderr.split('\n').filter((line) => /^\s+at /.test(line));
    expect(frames[0]).toMatch(new RegExp(`at yours .*${file}:3:`));
    expect(frames.join('\n')).not.toContain('node_modules');
  });

  it('knows its errors, whether they come of what was imported or of what was required', () => {
    const both = `import { attempt, InputError, isInputError } from 'cuffwork';
import { createRequire } from 'node:module';
const required = createRequire(import.meta.url)('cuffwork');
console.log(required.isInputError(new InputError([])), attempt(required.testedOneRepMax, {}).ok);`;
    writeFileSync(join(project, 'both.mjs'), both);
    expect(run('node', ['both.mjs'])).toBe('true false');
  });

  it('runs as ESM', () => {
    writeFileSync(join(project, 'esm.mjs'), esm);
    expect(run('node', ['esm.mjs'])).toBe(EXPECTED);
  });

  it('runs as CommonJS', () => {
    writeFileSync(join(project, 'cjs.cjs'), cjs);
    expect(run('node', ['cjs.cjs'])).toBe(EXPECTED);
  });

  // The oldest TypeScript that is supported, the one the project uses, and the newest that runs on Node 20.
  const compilers = ['typescript-5.4', 'typescript', 'typescript-6.0'];
  const resolutions = [
    { resolution: 'nodenext', files: ['main.mts', 'main.cts'] },
    { resolution: 'bundler', files: ['main.ts'] },
  ];
  it.each(compilers.flatMap((compiler) => resolutions.map((how) => ({ compiler, ...how }))))(
    'compiles strictly without skipLibCheck: $compiler, $resolution, $files',
    ({ compiler, resolution, files }) => {
      const folder = mkdtempSync(join(project, 'types-'));
      for (const file of files)
        writeFileSync(join(folder, file), `declare const console: { log(...values: unknown[]): void };\n${esm}`);
      const config = {
        compilerOptions: {
          strict: true,
          exactOptionalPropertyTypes: true,
          noUncheckedIndexedAccess: true,
          skipLibCheck: false,
          noEmit: true,
          target: 'ES2022',
          // Neither a browser’s types nor those of Node are needed.
          lib: ['ES2022'],
          module: resolution === 'bundler' ? 'esnext' : 'nodenext',
          moduleResolution: resolution,
          types: [],
        },
        files,
      };
      writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(config));
      expect(run('node', [resolve(`node_modules/${compiler}/bin/tsc`), '-p', folder])).toBe('');
    },
  );

  it('keeps zod off the root and everything off the equations', () => {
    expect(loaded('cuffwork')).not.toContain('zod');
    expect(loaded('cuffwork')).toContain('decimal.js');
    expect(loaded('cuffwork/study')).not.toContain('zod');
    expect(loaded('cuffwork/plan')).toContain('zod');
    expect(loaded('cuffwork/explain')).toContain('zod');
    expect(loaded('cuffwork/equations')).not.toMatch(/zod|decimal\.js/);
  });

  it('names typed arrays as compilers before 5.7 know them', () => {
    expect(declaring(/(Float64|Uint8|Uint32)Array</)).toEqual([]);
  });

  it('ships the JSON Schemas of its documents', () => {
    const names = Object.keys(declarations);
    const titles = `${JSON.stringify(names)}.map((name) => require('cuffwork/schemas/' + name + '.json').title).join()`;
    expect(run('node', ['-p', titles])).toBe(names.map((name) => `cuffwork ${name}`).join());
  });

  it('keeps zod off the root for modules too, in the files for Node and in those for bundlers', () => {
    const home = join(project, 'node_modules/cuffwork');
    /** Every package that a file and the files it imports import. */
    const packages = (file: string, seen = new Set<string>()): Set<string> => {
      for (const [, name] of readFileSync(file, 'utf8').matchAll(
        /(?:^(?:import|export)\b.*?|\brequire\()["'](\.?\.?[\w./-]+)["']/gm,
      )) {
        const path = name!.startsWith('.') ? join(dirname(file), name!) : name!;
        if (seen.has(path)) continue;
        seen.add(path);
        if (name!.startsWith('.')) packages(path, seen);
      }
      return new Set([...seen].filter((name) => !name.startsWith(home)));
    };
    for (const how of ['require', 'import'] as const) {
      const target = (entry: keyof typeof manifest.exports) =>
        join(home, (manifest.exports[entry] as Record<typeof how, { default: string }>)[how].default);
      expect([...packages(target('.'))]).toEqual(['decimal.js']);
      expect([...packages(target('./plan'))]).toContain('zod/mini');
      expect([...packages(target('./equations'))]).toEqual([]);
    }
  });

  it('loads where Object.prototype was frozen, but for decimal.js', () => {
    const frozen = (entry: string) =>
      run('node', [
        '-e',
        `Object.freeze(Object.prototype); try { require('${entry}') } catch (e) { console.log(e.stack) }`,
      ]);
    expect(frozen('cuffwork/equations')).toBe('');
    // When decimal.js learns to load there, this fails, and the ledger has one open row less.
    expect(frozen('cuffwork')).toMatch(/TypeError[\s\S]*decimal\.js/);
  });

  it('names no zod type in a declaration', () => {
    expect(declaring(/['"]zod/)).toEqual([]);
    expect(declaring(/StandardSchemaV1/).length).toBeGreaterThan(0);
  });

  it('ships the check values', () => {
    const files = readdirSync('src/checks');
    expect(files.length).toBeGreaterThan(5);
    const empty = `${JSON.stringify(files)}.filter((file) => !(require('cuffwork/checks/' + file).rows.length > 0)).join()`;
    expect(run('node', ['-p', empty])).toBe('');
  });
});
