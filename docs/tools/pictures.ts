import { maximumByEquation } from './pictures/maximum-by-equation.js';
import { pressureByGirth } from './pictures/pressure-by-circumference.js';
import { pressureByWidth } from './pictures/pressure-by-width.js';
import { sessionPicture } from './pictures/session-timeline.js';
import { truePercent } from './pictures/true-percent.js';
import { weeksPicture } from './pictures/weeks.js';

/** Every picture of the docs, drawn now: its name and its SVG. */
export const pictures = (): readonly (readonly [string, string])[] => [
  ['pressure-by-circumference', pressureByGirth()],
  ['pressure-by-width', pressureByWidth()],
  ['session-timeline', sessionPicture()],
  ['true-percent', truePercent()],
  ['maximum-by-equation', maximumByEquation()],
  ['weeks', weeksPicture()],
];
