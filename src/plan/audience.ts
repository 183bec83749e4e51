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

/** Cautions by whom they are for, each group most severe first. */
export function byAudience<C extends { readonly code: string; readonly severity: Severity }>(
  cautions: readonly C[],
): Record<Audience, C[]> {
  const groups: Record<Audience, C[]> = { person: [], practitioner: [], method: [] };
  for (const message of mostSevereFirst(cautions)) {
    const known = Object.hasOwn(audiences, message.code) ? audiences[message.code as CautionCode] : undefined;
    // One that the table does not have, such as an app’s own, is for the person unless it is a note.
    groups[known ?? (message.severity === 'note' ? 'practitioner' : 'person')].push(message);
  }
  return groups;
}
