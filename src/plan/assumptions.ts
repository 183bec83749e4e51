import { assume, type Assume } from '../answer/sentences.js';
import type { PlanAssumption } from '../answer/codes.js';

export const assumption: Assume<PlanAssumption> = assume;
