import { assume, type Assume } from '../answer/sentences.js';
import type { StrengthAssumption } from '../answer/codes.js';

export const assumption: Assume<StrengthAssumption> = assume;
