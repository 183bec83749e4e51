import * as z from 'zod/mini';
import * as documents from '../../src/plan/schema-documents.js';
import { annotations } from '../../src/plan/schema-parts.js';
import { planRequest, screeningRequest } from '../../src/plan/schema-requests.js';

/** What is published as JSON Schema, by the name of its file. */
export const declarations = {
  'plan-request': planRequest,
  plan: documents.planDocument,
  'screening-request': screeningRequest,
  'record-request': documents.recordRequest,
  record: documents.recordDocument,
  proposal: documents.proposalDocument,
} as const;

/** Strict validators want one type in one place: several become alternatives. */
function oneTypeEach(_name: string, value: unknown): unknown {
  const types = (value as { type?: unknown } | null)?.type;
  if (!Array.isArray(types)) return value;
  const { type: _, ...rest } = value as object & { type: unknown };
  return { ...rest, anyOf: types.map((type: unknown) => ({ type })) };
}

/**
 * A declaration as JSON Schema, draft 2020-12. It names no `$schema` and has no keyword beyond those that draft 7 knows
 * too, so that validators of either draft load it as they come.
 */
export function jsonSchema(name: keyof typeof declarations): object {
  const options = { target: 'draft-2020-12', io: 'input', metadata: annotations } as const;
  const { $schema: _, ...schema } = z.toJSONSchema(declarations[name](), options);
  const text = JSON.stringify({ title: `cuffwork ${name}`, $comment: 'JSON Schema, draft 2020-12', ...schema });
  return JSON.parse(text, oneTypeEach) as object;
}
