import { assume, type Assume } from '../answer/sentences.js';
import type { SessionAssumption } from '../answer/codes.js';

export const assumption: Assume<SessionAssumption> = assume;
