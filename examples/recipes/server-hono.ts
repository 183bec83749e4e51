import type { StandardSchemaV1 } from '@standard-schema/spec';
import { estimateOcclusionPressure } from 'cuffwork';
import { planSession } from 'cuffwork/plan';
import { Hono } from 'hono';
import { validator } from 'hono/validator';

/** Checks a body with any Standard Schema, and answers 422 with the issues. */
const body = <I>(schema: StandardSchemaV1<I>) =>
  validator('json', async (given, context) => {
    const result = await schema['~standard'].validate(given);
    return result.issues ? context.json({ issues: result.issues }, 422) : result.value;
  });

/** Runs in Node, in Bun, in Deno, and at the edge: it needs nothing but `fetch`. */
const app = new Hono()
  .post('/occlusion-pressure', body(estimateOcclusionPressure.input), (context) =>
    context.json(estimateOcclusionPressure(context.req.valid('json'))),
  )
  .post('/plan', body(planSession.input), (context) => context.json(planSession(context.req.valid('json'))));

export default app;
