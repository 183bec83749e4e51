import { attempt, type InputIssue, type Path } from '../answer/issues.js';
import { planSession } from './plan-session.js';
import { planDocument } from './schema.js';
import { storedDocument, type StoredKind } from './stored.js';
import type { Plan } from './types.js';

/** A plan is made again from its request. */
export const planKind: StoredKind<Plan> = {
  current: 1,
  schema: planDocument,
  upgrades: {},
  remade: ({ request }) => planSession(request),
};

/** A plan that was stored; what is wrong with it goes to `issues`. */
export function planInto(issues: InputIssue[], document: unknown, place: Path): Plan | undefined {
  const result = attempt((given: unknown) => storedDocument({ plan: planKind }, given, place) as Plan, document);
  if (result.ok) return result.value;
  issues.push(...result.issues);
  return undefined;
}
