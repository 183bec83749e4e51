import { assume, type Assume } from '../answer/sentences.js';
import type { PressureAssumption } from '../answer/codes.js';

export const assumption: Assume<PressureAssumption> = assume;
