/**
 * What the documents take, as Standard Schemas for forms and servers.
 *
 * @module cuffwork/schemas
 */
import type { StandardSchemaV1 } from '@standard-schema/spec';
import { planRequest } from './plan/schema.js';
import type { PlanRequest } from './plan/types.js';

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
export const planRequestSchema: StandardSchemaV1<PlanRequest> = planRequest;
