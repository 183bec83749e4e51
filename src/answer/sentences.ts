import type { SourceId } from '../evidence/sources.js';
import type { Assumption, Caution, Sentence, Severity } from './answer.js';
import type { AssumptionCode, CautionCode } from './codes.js';
import type { Writable } from './defined.js';
import type { Path } from './issues.js';
import { fill, type Catalogue, type MessageValues } from './messages.js';

/** An assumption by its code; a layer narrows it to its own codes. */
export const assume = (code: AssumptionCode, values?: MessageValues): Assumption =>
  values ? { code, values } : { code };

/** Makes the assumptions of one layer, typed by their codes. */
export type Assume<C extends AssumptionCode> = (code: C, values?: MessageValues) => Assumption;

/** Makes the sentences of one layer’s catalogue. */
export const sentencesOf =
  <C extends Catalogue>(catalogue: C) =>
  (code: keyof C & string, values?: MessageValues): Sentence => {
    const text = catalogue[code]!;
    return values ? { code, text: fill(text, values), values } : { code, text };
  };

/** Makes the cautions of one layer’s catalogue. */
export function cautionsOf<C extends Catalogue>(catalogue: C) {
  return (
    severity: Severity,
    code: keyof C & CautionCode,
    values?: MessageValues,
    more?: { readonly path?: Path | undefined; readonly source?: SourceId | undefined },
  ): Caution => {
    const text = catalogue[code]!;
    const caution: Writable<Caution> = { severity, code, text };
    if (values) {
      caution.text = fill(text, values);
      caution.values = values;
    }
    if (more?.path) caution.path = more.path;
    if (more?.source) caution.source = more.source;
    return caution;
  };
}
