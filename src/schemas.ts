/**
 * What the documents take, as Standard Schemas for forms and servers.
 *
 * @module cuffwork/schemas
 */
import type { StandardSchemaV1 } from '@standard-schema/spec';
import type { Proposal } from './plan/proposal.js';
import type { RecordRequest, SessionRecord } from './plan/record.js';
import * as schemas from './plan/schema.js';
import type { ScreeningRequest } from './plan/screen.js';
import type { Plan, PlanRequest } from './plan/types.js';

/** A schema under its public type. Its own type also has `undefined` where a field may be left out. */
const standard = <T>(schema: unknown): StandardSchemaV1<T> => schema as StandardSchemaV1<T>;

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
export const planRequestSchema = /* @__PURE__ */ standard<PlanRequest>(schemas.planRequest);

/**
 * A plan as a Standard Schema. Fields it does not know are kept; `readDocument` also reads older versions.
 *
 * @example
 * ```ts
 * import { planSchema } from 'cuffwork/schemas';
 * const result = await planSchema['~standard'].validate({ unknown: 1 });
 * (result.issues ?? []).length > 0; // => true
 * ```
 */
export const planSchema = /* @__PURE__ */ standard<Plan>(schemas.planDocument);

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
export const screeningRequestSchema = /* @__PURE__ */ standard<ScreeningRequest>(schemas.screeningRequest);

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
export const recordRequestSchema = /* @__PURE__ */ standard<RecordRequest>(schemas.recordRequest);

/**
 * A record as a Standard Schema. Fields it does not know are kept; `readDocument` also reads older versions.
 *
 * @example
 * ```ts
 * import { recordSchema } from 'cuffwork/schemas';
 * const result = await recordSchema['~standard'].validate({ unknown: 1 });
 * (result.issues ?? []).length > 0; // => true
 * ```
 */
export const recordSchema = /* @__PURE__ */ standard<SessionRecord>(schemas.recordDocument);

/**
 * A proposal as a Standard Schema. Fields it does not know are kept; `readDocument` also reads older versions.
 *
 * @example
 * ```ts
 * import { proposalSchema } from 'cuffwork/schemas';
 * const result = await proposalSchema['~standard'].validate({ unknown: 1 });
 * (result.issues ?? []).length > 0; // => true
 * ```
 */
export const proposalSchema = /* @__PURE__ */ standard<Proposal>(schemas.proposalDocument);
