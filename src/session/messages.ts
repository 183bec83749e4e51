import { speaker } from '../answer/answer.js';
import type { Catalogue } from '../answer/messages.js';

/** What the session floor says. */
export const sessionMessages = {
  'clock-starts-with-inflation':
    'The cuff is taken as up from the first repetition; filling and emptying it take no time here.',
  'tempo-kept': 'Every repetition is taken to keep the tempo.',
  'restriction-long-exercise':
    '{minutes} min of restriction in one exercise is above the 5 to 10 min that guidance gives.',
  'restriction-long-limb': '{minutes} min of restriction on one limb is above the usual limit of 20 min a session.',
} as const satisfies Catalogue;

export type SessionCode = keyof typeof sessionMessages;
export const { assumption, caution } = /* @__PURE__ */ speaker(sessionMessages);
