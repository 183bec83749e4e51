import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createContext, runInContext } from 'node:vm';
import { build } from 'esbuild';
import { createElement } from 'react';
import { renderToString } from 'react-dom/server';
import { afterAll, describe, expect, it } from 'vitest';
import { numberOf, OcclusionForm, resolver } from '../../examples/recipes/form.js';
import { server } from '../../examples/recipes/server-fastify.js';
import app from '../../examples/recipes/server-hono.js';
import { inWorker } from '../../examples/recipes/worker-node.mjs';

const FOLDER = 'examples/recipes';

// The pooled curve of the thigh, seated, by hand:
// 72 + 1.25 × (23 + 17.9 × 51 / 10) = 214.86.
const right = {
  limb: 'leg',
  side: 'left',
  circumferenceCm: 51,
  systolicMmHg: 118,
  diastolicMmHg: 72,
  cuffWidthCm: 10,
  posture: 'seated',
} as const;
const wrong = { ...right, circumferenceCm: 20, cuffWidthCm: undefined, systolicMmHg: '118' };
const session = {
  systolicMmHg: 118,
  diastolicMmHg: 72,
  posture: 'seated',
  limbs: [{ limb: 'leg', side: 'left', cuffWidthCm: 10, percentLop: 50, circumferenceCm: 51 }],
  exercises: [
    { name: 'walking', mode: 'aerobic', limb: 'leg', scheme: '5x2min', restS: 60, restriction: 'intermittent' },
  ],
};

type Post = (path: string, body: unknown) => Promise<{ status: number; body: any }>;
const servers: readonly (readonly [string, Post])[] = [
  [
    'Fastify',
    async (url, body) => {
      const answer = await server.inject({ method: 'POST', url, payload: body as object });
      return { status: answer.statusCode, body: answer.json() };
    },
  ],
  [
    'Hono',
    async (path, body) => {
      const headers = { 'content-type': 'application/json' };
      const answer = await app.request(path, { method: 'POST', headers, body: JSON.stringify(body) });
      return { status: answer.status, body: await answer.json() };
    },
  ],
];

describe.each(servers)('the recipe of a server with %s', (_name, post) => {
  it('answers a right request', async () => {
    const { status, body } = await post('/occlusion-pressure', right);
    expect([status, body.kind, Number(body.value.toFixed(2))]).toEqual([200, 'occlusion-pressure', 214.86]);
    expect((await post('/plan', session)).body.document).toBe('plan');
  });

  it('answers 422 with what is wrong by the path of the field, all at once', async () => {
    const { status, body } = await post('/occlusion-pressure', wrong);
    expect(status).toBe(422);
    expect(body.issues.map(({ path, code }: { path: string[]; code: string }) => [path.join('.'), code])).toEqual([
      ['circumferenceCm', 'unit-slip'],
      ['systolicMmHg', 'wrong-type'],
      ['cuffWidthCm', 'missing'],
    ]);
    const inside = await post('/plan', { ...session, limbs: [{ ...session.limbs[0], cuffWidthCm: 100 }] });
    expect([inside.status, inside.body.issues[0].path]).toEqual([422, ['limbs', 0, 'cuffWidthCm']]);
  });

  it.each([[[]], [{}], [{ ...right, secret: 1 }]])('answers 422 to a body that is no input: %j', async (body) => {
    expect((await post('/occlusion-pressure', body)).status).toBe(422);
  });
});
afterAll(() => server.close());

describe('the recipe of a form', () => {
  const options = { fields: {}, shouldUseNativeValidation: false, names: undefined };
  const check = (values: object) => resolver(values as never, undefined, options as never);

  it('gives the input of a form that is right', async () => {
    expect(await check(right)).toEqual({ values: right, errors: {} });
  });

  it('gives an error to each field that is wrong', async () => {
    const { errors } = await check(wrong);
    expect(Object.keys(errors).sort()).toEqual(['circumferenceCm', 'cuffWidthCm', 'systolicMmHg']);
    expect((errors as Record<string, { message: string }>)['cuffWidthCm']?.message).toContain('cuffWidthCm is missing');
  });

  it('reads a decimal comma, and leaves out what is empty', () => {
    expect(['10,5', ' 10.5 ', '', 'ten'].map(numberOf)).toEqual([10.5, 10.5, undefined, 'ten']);
  });

  it('labels its fields with what the function says of them', () => {
    const page = renderToString(createElement(OcclusionForm)).replaceAll('<!-- -->', '');
    for (const label of ['limb circumference (a number from 25 to 120 cm; mid-thigh', '(a number from 60 to 300 mmHg;'])
      expect(page).toContain(label);
  });
});

describe('the recipe of a worker', () => {
  const request = { ...right, answer: 'occlusion-pressure', equation: 'pooled-curve-thigh-2026' } as const;
  it('moves columns between threads', async () => {
    const told = await inWorker({ ...request, circumferenceCm: new Float64Array([51, Number.NaN]) });
    const { answer } = told as Extract<typeof told, { answer: unknown }>;
    expect([...answer.value].map((value) => value.toFixed(2))).toEqual(['214.86', 'NaN']);
    expect([...answer.flag].map((flag) => flag > 0)).toEqual([false, true]);
  });

  it('sends issues as data', async () => {
    const told = await inWorker({ ...request, cuffWidthCm: 100, circumferenceCm: new Float64Array([51]) });
    expect('issues' in told && told.issues.map(({ path }) => path)).toEqual([['cuffWidthCm']]);
  });
});

describe('the recipe of an edge runtime', () => {
  it('answers where there is nothing of Node, and no evaluation of text', async () => {
    const { outputFiles } = await build({
      entryPoints: [join(FOLDER, 'server-hono.ts')],
      bundle: true,
      write: false,
      format: 'iife',
      globalName: 'served',
      platform: 'neutral',
      target: 'es2022',
      mainFields: ['module', 'main'],
    });
    const globals = { Request, Response, Headers, URL, URLSearchParams, TextEncoder, TextDecoder, FormData, Blob };
    const context = createContext({ ...globals }, { codeGeneration: { strings: false, wasm: false } });
    runInContext(outputFiles[0]!.text, context);
    const { default: edge } = (context as unknown as { served: { default: typeof app } }).served;
    const headers = { 'content-type': 'application/json' };
    const post = (body: object) =>
      edge.fetch(
        new Request('http://edge/occlusion-pressure', { method: 'POST', headers, body: JSON.stringify(body) }),
      );
    const answer = (await (await post(right)).json()) as { value: number };
    expect(answer.value.toFixed(2)).toBe('214.86');
    expect((await post(wrong)).status).toBe(422);
  });
});

describe('docs/recipes.md', () => {
  it('shows the body of an answer as it is', async () => {
    const [, shown] = /^```json\n([\s\S]*?)^```/m.exec(readFileSync('docs/recipes.md', 'utf8'))!;
    const payload = { ...right, circumferenceCm: 20, cuffWidthCm: undefined };
    const answer = await server.inject({ method: 'POST', url: '/occlusion-pressure', payload });
    expect(answer.json()).toEqual(JSON.parse(shown!));
  });
});

describe('the recipe of React Native', () => {
  it('needs no classes of Unicode in a regular expression, which older engines refuse', () => {
    const built = readdirSync('dist', { recursive: true, encoding: 'utf8' }).filter((file) => /\.c?js$/.test(file));
    expect(built.length).toBeGreaterThan(10);
    expect(built.filter((file) => readFileSync(join('dist', file), 'utf8').includes('\\p{'))).toEqual([]);
  });
});
