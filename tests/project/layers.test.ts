import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

// Lowest first: a file imports only from its own layer and the layers below it.
const LAYERS = [
  'quantity',
  'statistics',
  'evidence',
  'answer',
  'strength',
  'pressure',
  'session',
  'teaching',
  'study',
  'plan',
  'text',
];

const files = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => join('src', name));

const importsOf = (file: string) =>
  ts.preProcessFile(readFileSync(file, 'utf8')).importedFiles.map(({ fileName }) => fileName);

/** The files of src that a file imports, values and types alike, `import('…')` too. */
const edgesOf = (file: string) =>
  importsOf(file)
    .filter((name) => name.startsWith('.') && name.endsWith('.js'))
    .map((name) => join(dirname(file), name).replace(/\.js$/, '.ts'));

/** Circles in a graph of imports, each as the files along it. */
function circles(graph: ReadonlyMap<string, readonly string[]>): string[][] {
  const done = new Set<string>();
  const found: string[][] = [];
  const walk = (file: string, trail: readonly string[]): void => {
    if (trail.includes(file)) {
      found.push([...trail.slice(trail.indexOf(file)), file]);
      return;
    }
    if (done.has(file)) return;
    for (const next of graph.get(file) ?? []) walk(next, [...trail, file]);
    done.add(file);
  };
  for (const file of graph.keys()) walk(file, []);
  return found;
}

describe('the layers of src', () => {
  it('are the folders there are', () => {
    const folders = readdirSync('src', { withFileTypes: true }).filter((entry) => entry.isDirectory());
    for (const { name } of folders) expect([...LAYERS, 'checks']).toContain(name);
    expect(files.length).toBeGreaterThan(30);
  });

  it.each(files)('%s imports downwards only', (file) => {
    const layer = LAYERS.indexOf(file.split(sep)[1]!);
    for (const name of importsOf(file)) {
      if (!name.startsWith('.')) {
        expect(['zod/mini', 'decimal.js', '@standard-schema/spec']).toContain(name);
        // zod stays in the plan layer; decimal.js behind one file.
        if (name === 'zod/mini') expect(file).toMatch(/^src\/plan\//);
        if (name === 'decimal.js') expect(file).toBe('src/quantity/decimal.ts');
        continue;
      }
      const target = relative('src', join(dirname(file), name)).split(sep);
      const below = target.length > 1 ? LAYERS.indexOf(target[0]!) : LAYERS.length;
      if (layer >= 0) expect(below, `${file} imports ${name}`).toBeLessThanOrEqual(layer);
    }
  });

  it('have no circle of imports, those of types counted, also inside a layer', () => {
    const graph = new Map(files.map((file) => [file, edgesOf(file)]));
    // Every edge ends at a file of the graph: none is lost by how it is written.
    for (const edges of graph.values()) for (const edge of edges) expect(files).toContain(edge);
    expect([...graph.values()].flat().length).toBeGreaterThan(files.length);
    expect(circles(graph)).toEqual([]);
  });

  it('what computes takes the functions of Math that no host can change', () => {
    const others = files.filter((file) => {
      const code = readFileSync(file, 'utf8').replace(/^ *\/?\*.*$/gm, '');
      return /\bMath\b/.test(code) && !/^import \{ Math(, square)? \} from '.*\/maths\.js'/m.test(code);
    });
    // Decimals ask whether the host changed it; their built file imports no other of ours, so they keep it themselves.
    expect(others).toEqual(['decimal.ts', 'maths.ts'].map((file) => join('src', 'quantity', file)));
  });

  it('nothing is raised to a power, which engines round differently, but where the power is no whole number', () => {
    const raising = files.filter((file) =>
      / \*\*=? |\bMath\.(pow|hypot|sin|cos|tan|atan2?)\b/.test(readFileSync(file, 'utf8').replace(/^ *\/?\*.*$/gm, '')),
    );
    expect(raising).toEqual([join('src', 'strength', 'equations', 'lombardi.ts')]);
  });

  it('equation files import types only, and Math', () => {
    const equations = files.filter((file) => file.includes(`${sep}equations${sep}`));
    expect(equations.length).toBeGreaterThan(5);
    for (const file of equations) expect(readFileSync(file, 'utf8'), file).not.toMatch(/^import (?!type|\{ Math \})/m);
  });

  it('nothing of one engine alone is used', () => {
    for (const file of files)
      expect(readFileSync(file, 'utf8'), file).not.toMatch(/\b(Buffer|process|Intl|structuredClone)\b|node:/);
  });

  it('no regular expression asks for a property of Unicode, which older engines refuse', () => {
    expect(files.filter((file) => /\\p\{[A-Z]/i.test(readFileSync(file, 'utf8')))).toEqual([]);
  });
});

describe('an equation file', () => {
  // What a reader of the docs is owed beside every bare function.
  const parts = ['Formula:', 'Fitted range:', 'Error:', 'Evidence:', 'Source:', '@param', '@returns', '@example'];
  it.each(files.filter((file) => file.includes(`${sep}equations${sep}`)))(
    '%s documents everything about it',
    (file) => {
      const text = readFileSync(file, 'utf8');
      for (const part of parts) expect(text).toContain(part);
      // The code is held to the formula of its record; the one that readers see has no number that the code has not.
      const numbers = (of: string) => (of.match(/(?<![\w.])\d+(\.\d+)?(?![\w.])/g) ?? []).map(Number);
      const code = new Set(numbers(text.replace(/\/\*\*[\s\S]*?\*\//g, '')));
      const shown = [...text.matchAll(/^ \* Formula: ([\s\S]*?)(?:,|\n \*\n)/gm)].flatMap(([, formula]) =>
        numbers(formula!),
      );
      expect(shown.filter((number) => !code.has(number))).toEqual([]);
    },
  );
});
