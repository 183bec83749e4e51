import { guardMessages } from '../answer/guards.js';
import { fill, type Catalogue, type MessageValues } from '../answer/messages.js';
import { estimateMessages } from '../pressure/estimate-messages.js';
import { pressureMessages, targetMessages } from '../pressure/messages.js';
import { comparisonMessages as sessionComparisonMessages, sessionMessages } from '../session/messages.js';
import { comparisonMessages as strengthComparisonMessages, strengthMessages } from '../strength/messages.js';
import { filled } from './coded.js';
import { documentMessages } from './document-messages.js';
import { planMessages } from './messages.js';
import { screeningMessages } from './screening-messages.js';

/** Looks up the text of a sentence. */
export type TextByCode = (code: string, values?: MessageValues, given?: string) => string | undefined;

const textsOf =
  (sentences: Catalogue): TextByCode =>
  (code, values = {}, given) => {
    if (!Object.hasOwn(sentences, code)) return undefined;
    const sentence = sentences[code]!;
    const text = given === sentence || given === fill(sentence, values) ? given : filled(sentence, values);
    return /\{\w+\}/.test(text) ? undefined : text;
  };

/** Every sentence that a plan can hold, by its code: those of its answers, and the stops that it keeps. */
const planTexts = {
  ...guardMessages,
  ...estimateMessages,
  ...pressureMessages,
  ...targetMessages,
  ...strengthMessages,
  ...sessionMessages,
  ...planMessages,
  ...screeningMessages,
};

/**
 * The text of a sentence of a plan by its code: the one given where the catalogue says just that, else what the
 * catalogue says. Nothing where it has no such code, or where the values of another version leave a slot open.
 */
export const planTextByCode = textsOf(planTexts);

/** The same of a sentence of any document. */
export const textByCode = textsOf({
  ...planTexts,
  ...strengthComparisonMessages,
  ...sessionComparisonMessages,
  ...documentMessages,
});
