import { assume, type Assume } from '../answer/answer.js';
import type { PressureAssumption } from '../answer/codes.js';

export const assumption: Assume<PressureAssumption> = assume;
