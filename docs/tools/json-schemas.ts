import * as z from 'zod/mini';
import * as declared from '../../src/plan/schema.js';

/** What is published as JSON Schema, by the name of its file. */
export const declarations = {
  'plan-request': declared.planRequest,
  plan: declared.planDocument,
  'screening-request': declared.screeningRequest,
  'record-request': declared.recordRequest,
  record: declared.recordDocument,
  proposal: declared.proposalDocument,
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
  const options = { target: 'draft-2020-12', io: 'input', metadata: declared.annotations } as const;
  const { $schema: _, ...schema } = z.toJSONSchema(declarations[name](), options);
  const text = JSON.stringify({ title: `cuffwork ${name}`, $comment: 'JSON Schema, draft 2020-12', ...schema });
  return JSON.parse(text, oneTypeEach) as object;
}
