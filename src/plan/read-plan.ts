import { attempt, InputError, isInputError, moved, type InputIssue, type Path } from '../answer/issues.js';
import { itemCautions } from './item-cautions.js';
import { planSession } from './plan-session.js';
import { planDocument } from './schema.js';
import { stopsMissing } from './stops.js';
import { keptUnverified, storedDocument, type StoredKind } from './stored.js';
import type { Plan } from './types.js';

/** A plan made again from its request; what is wrong there is named from the top of the plan. */
function planAgain({ request }: Plan): Plan {
  try {
    return planSession(request);
  } catch (error) {
    if (!isInputError(error)) throw error;
    throw new InputError(error.issues.map((found) => moved(found, (path) => ['request', ...path])));
  }
}

/** A plan is made again from its request; with every stop that its numbers lead to. */
export const planKind: StoredKind<Plan> = {
  current: 1,
  schema: planDocument,
  upgrades: {},
  remade: planAgain,
  otherwise: (plan, made, unverified) => {
    const kept = keptUnverified(plan, made, unverified);
    const converted = [...kept.items.flatMap(itemCautions), ...kept.limbs.flatMap(({ cautions }) => cautions)];
    return { ...kept, stops: [...kept.stops, ...stopsMissing(kept.stops, converted)] };
  },
};

/** A plan that was stored; what is wrong with it goes to `issues`. */
export function planInto(issues: InputIssue[], document: unknown, place: Path): Plan | undefined {
  const result = attempt((given: unknown) => storedDocument({ plan: planKind }, given, place) as Plan, document);
  if (result.ok) return result.value;
  issues.push(...result.issues);
  return undefined;
}
