/**
 * Stored documents as Standard Schemas. Requests have theirs on the function that takes them, such as
 * `planSession.input`.
 *
 * @module cuffwork/schemas
 */
import type { StandardSchemaV1 } from '@standard-schema/spec';
import { schemaOf } from './answer/with-input.js';
import type { Proposal } from './plan/proposal.js';
import type { SessionRecord } from './plan/record.js';
import { documentOf } from './plan/read-document.js';
import type { Plan } from './plan/types.js';

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
export const planSchema: StandardSchemaV1<Plan> = schemaOf((given) => documentOf(['plan'], given));

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
export const recordSchema: StandardSchemaV1<SessionRecord> = schemaOf((given) => documentOf(['record'], given));

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
export const proposalSchema: StandardSchemaV1<Proposal> = schemaOf((given) => documentOf(['proposal'], given));
