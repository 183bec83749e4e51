import { guardMessages } from '../answer/guards.js';
import { frozen } from '../quantity/frozen.js';
import { assumptionTexts } from './assumptions.js';
import { answerMessages } from '../answer/messages.js';
import { documentMessages } from '../plan/document-messages.js';
import { screeningMessages } from '../plan/screening-messages.js';
import { estimateMessages } from '../pressure/estimate-messages.js';
import { pressureMessages, targetMessages } from '../pressure/messages.js';
import { comparisonMessages as sessionComparisonMessages, sessionMessages } from '../session/messages.js';
import { comparisonMessages as strengthComparisonMessages, strengthMessages } from '../strength/messages.js';
import { studyMessages } from '../study/messages.js';
import { teachingMessages } from '../teaching/messages.js';

/**
 * Every sentence the library says, by its code. Translate the texts, keep the `{slots}`, and put the values of a
 * caution or an issue into them with {@link fill}.
 *
 * @example
 * ```ts
 * import { fill, messages } from 'cuffwork/explain';
 * fill(messages['percent-below-usual'], { percentLop: 30, low: 40, high: 80 }); // => '30 % is below the 40 to 80 % of occlusion pressure that guidance gives.'
 * ```
 */
export const messages = frozen({
  ...answerMessages,
  ...guardMessages,
  ...estimateMessages,
  ...pressureMessages,
  ...targetMessages,
  ...strengthMessages,
  ...strengthComparisonMessages,
  ...sessionMessages,
  ...sessionComparisonMessages,
  ...documentMessages,
  ...screeningMessages,
  ...studyMessages,
  ...teachingMessages,
  ...assumptionTexts,
} as const);

/** The code of a sentence in {@link messages}. */
export type MessageCode = keyof typeof messages;
