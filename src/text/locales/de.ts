/**
 * The texts of the library in German: give them to `explain`, `show` and the others as `locale`.
 *
 * @module cuffwork/explain/de
 */
import { ownDocument } from '../../answer/own.js';
import type { Texts } from '../texts.js';
import texts from './de.json' with { type: 'json' };

/**
 * Every text of the library in German, by its code.
 *
 * @example
 * ```ts
 * import { testedOneRepMax } from 'cuffwork';
 * import { show } from 'cuffwork/explain';
 * import { de } from 'cuffwork/explain/de';
 * const maximum = testedOneRepMax({ load: 62.5 });
 * show(maximum, { locale: de }).split(' (')[0]; // => 'Einwiederholungsmaximum 62,5 kg'
 * ```
 */
export const de: Texts = ownDocument(texts);
