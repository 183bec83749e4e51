/**
 * The bare functions: numbers in, a number out, nothing checked.
 *
 * @module cuffwork/equations
 */
export { arm2015 } from './pressure/equations/arm-2015.js';
export { thigh2015 } from './pressure/equations/thigh-2015.js';
export { thigh2019 } from './pressure/equations/thigh-2019.js';
export { widthRatio } from './pressure/equations/width-ratio.js';
export { brzycki } from './strength/equations/brzycki.js';
export { epley } from './strength/equations/epley.js';
