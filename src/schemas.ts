/**
 * What the documents take, as Standard Schemas for forms and servers.
 *
 * @module cuffwork/schemas
 */
import type { StandardSchemaV1 } from '@standard-schema/spec';
import { attempt } from './answer/issues.js';
import type { Proposal } from './plan/proposal.js';
import type { RecordRequest, SessionRecord } from './plan/record.js';
import { requestReader } from './plan/parse.js';
import { documentOf } from './plan/read-document.js';
import * as schemas from './plan/schema.js';
import type { ScreeningRequest } from './plan/questions.js';
import type { Plan, PlanRequest } from './plan/types.js';

/** A reader as a Standard Schema: what it refuses is said in the words of its {@link InputError}. */
const standard = <T>(read: (given: unknown) => unknown): StandardSchemaV1<T> => ({
  '~standard': {
    version: 1,
    vendor: 'cuffwork',
    validate: (given) => {
      const result = attempt(read, given);
      if (result.ok) return { value: result.value as T };
      return { issues: result.issues.map(({ text, path }) => ({ message: text, path })) };
    },
  },
});

/**
 * The request of `planSession` as a Standard Schema, for forms and servers.
 *
 * Its bounds are those of the library’s own guards. Relations between fields (systolic above diastolic, a girth
 * that fits the limb, either `scheme` or `sets`) are left to `planSession`.
 *
 * @example
 * ```ts
 * import { planRequestSchema } from 'cuffwork/schemas';
 * const result = await planRequestSchema['~standard'].validate({ systolicMmHg: 16 });
 * (result.issues ?? []).length > 0; // => true
 * ```
 */
export const planRequestSchema = /* @__PURE__ */ standard<PlanRequest>(
  requestReader(schemas.planRequest, 'a request for a plan'),
);

/**
 * A plan as a Standard Schema. It verifies the document as `readDocument` does.
 *
 * @example
 * ```ts
 * import { planSchema } from 'cuffwork/schemas';
 * const result = await planSchema['~standard'].validate({ unknown: 1 });
 * (result.issues ?? []).length > 0; // => true
 * ```
 */
export const planSchema = /* @__PURE__ */ standard<Plan>((given) => documentOf(['plan'], given));

/**
 * The answers that `screen` takes as a Standard Schema.
 *
 * @example
 * ```ts
 * import { screeningRequestSchema } from 'cuffwork/schemas';
 * const result = await screeningRequestSchema['~standard'].validate({ unknown: 1 });
 * (result.issues ?? []).length > 0; // => true
 * ```
 */
export const screeningRequestSchema = /* @__PURE__ */ standard<ScreeningRequest>(
  requestReader(schemas.screeningRequest, 'answers to a screening'),
);

/**
 * The request of `recordSession` as a Standard Schema.
 *
 * @example
 * ```ts
 * import { recordRequestSchema } from 'cuffwork/schemas';
 * const result = await recordRequestSchema['~standard'].validate({ unknown: 1 });
 * (result.issues ?? []).length > 0; // => true
 * ```
 */
export const recordRequestSchema = /* @__PURE__ */ standard<RecordRequest>(
  requestReader(schemas.recordRequest, 'what was done of a plan'),
);

/**
 * A record as a Standard Schema. It verifies the document as `readDocument` does.
 *
 * @example
 * ```ts
 * import { recordSchema } from 'cuffwork/schemas';
 * const result = await recordSchema['~standard'].validate({ unknown: 1 });
 * (result.issues ?? []).length > 0; // => true
 * ```
 */
export const recordSchema = /* @__PURE__ */ standard<SessionRecord>((given) => documentOf(['record'], given));

/**
 * A proposal as a Standard Schema. It verifies the document as `readDocument` does.
 *
 * @example
 * ```ts
 * import { proposalSchema } from 'cuffwork/schemas';
 * const result = await proposalSchema['~standard'].validate({ unknown: 1 });
 * (result.issues ?? []).length > 0; // => true
 * ```
 */
export const proposalSchema = /* @__PURE__ */ standard<Proposal>((given) => documentOf(['proposal'], given));
