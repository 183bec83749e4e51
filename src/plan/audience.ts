import { cautionAudiences, type Audience } from '../answer/audiences.js';
import type { Severity } from '../answer/answer.js';
import type { CautionCode } from '../answer/codes.js';
import { frozen } from '../quantity/frozen.js';
import { mostSevereFirst } from './severity.js';

/**
 * Whom each caution and note is for, by its code. A caution is for the person where it changes what is done on the
 * spot; for the practitioner where another reading, cuff, load or test would settle it; a remark on the method
 * changes nothing in this session.
 *
 * @example
 * ```ts
 * import { audiences } from 'cuffwork/plan';
 * audiences['restriction-long-limb']; // => 'person'
 * audiences['percent-not-flow']; // => 'method'
 * ```
 */
export const audiences: Readonly<Partial<Record<CautionCode, Audience>>> = frozen(cautionAudiences);

/** A caution that the table does not have, such as an app’s own, is for the person unless it is a note. */
const audienceOf = ({ code, severity }: { readonly code: string; readonly severity: Severity }): Audience =>
  (Object.hasOwn(audiences, code) && audiences[code as CautionCode]) ||
  (severity === 'note' ? 'practitioner' : 'person');

/** Cautions by whom they are for, each group most severe first. */
export function byAudience<C extends { readonly code: string; readonly severity: Severity }>(
  cautions: readonly C[],
): Record<Audience, C[]> {
  const groups: Record<Audience, C[]> = { person: [], practitioner: [], method: [] };
  for (const message of mostSevereFirst(cautions)) groups[audienceOf(message)].push(message);
  return groups;
}
