import { gather, within, type InputIssue, type Path } from '../answer/issues.js';
import { compactedOlder, expandedPlan, expansionOf } from './expanded.js';
import { itemCautions } from './item-cautions.js';
import { planSession } from './plan-session.js';
import { planDocument } from './schema-documents.js';
import { stopsMissing } from './stops.js';
import { keptUnverified, storedDocument, type StoredKind } from './stored.js';
import type { ExpandedPlan, Plan } from './types.js';

/** A plan is made again from its request; with every stop that its numbers lead to. */
export const planKind: StoredKind<Plan, ExpandedPlan> = {
  current: 2,
  schema: planDocument,
  upgrades: { 1: compactedOlder },
  remade: ({ request }) => {
    const document = within(['request'], () => planSession(request));
    return { document, expanded: expansionOf(document)! };
  },
  asUnverified: (plan, made, unverified) => {
    const kept = keptUnverified(plan, made.document, unverified);
    const { items, limbs } = expandedPlan(kept, made.expanded);
    const carried = [...items.flatMap(itemCautions), ...limbs.flatMap(({ cautions }) => cautions)];
    const document = { ...kept, stops: [...kept.stops, ...stopsMissing(kept.stops, carried)] };
    return { document, expanded: expandedPlan(document, made.expanded) };
  },
};

/** A plan that was stored, with whole answers; what is wrong with it goes to `issues`. */
export function planInto(issues: InputIssue[], document: unknown, place: Path): ExpandedPlan | undefined {
  return gather(issues, () => storedDocument({ plan: planKind }, document, place).expanded as ExpandedPlan);
}
