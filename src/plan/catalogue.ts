import { guardMessages } from '../answer/guards.js';
import { answerMessages, fill, type Catalogue, type MessageValues } from '../answer/messages.js';
import { estimateMessages } from '../pressure/estimate-messages.js';
import { pressureMessages } from '../pressure/messages.js';
import { sessionMessages } from '../session/messages.js';
import { strengthMessages } from '../strength/messages.js';
import { filled } from './coded.js';
import { planMessages } from './messages.js';
import { screeningMessages } from './screening-messages.js';

/** Every sentence that a document can hold, by its code. */
const sentences: Catalogue = {
  ...answerMessages,
  ...guardMessages,
  ...estimateMessages,
  ...pressureMessages,
  ...strengthMessages,
  ...sessionMessages,
  ...planMessages,
  ...screeningMessages,
};

/**
 * The text of a sentence by its code: the one given where the catalogue says just that, else what the catalogue says.
 * Nothing where it has no such code, or where the values of another version leave a slot open.
 */
export function textByCode(code: string, values: MessageValues = {}, given?: string): string | undefined {
  if (!Object.hasOwn(sentences, code)) return undefined;
  const sentence = sentences[code]!;
  const text = given === sentence || given === fill(sentence, values) ? given : filled(sentence, values);
  return /\{\w+\}/.test(text) ? undefined : text;
}
