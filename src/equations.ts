/** The bare functions: numbers in, a number out, nothing checked. */
export { arm2015 } from './pressure/equations/arm-2015.js';
export { diastolicBias, systolicBias, zeroErrorBladderWidth } from './pressure/equations/bladder-width.js';
export { circumferenceBands } from './pressure/equations/circumference-bands.js';
export { padding2006 } from './pressure/equations/padding-2006.js';
export { pooledMeans } from './pressure/equations/pooled-means.js';
export { systolic130 } from './pressure/equations/systolic-130.js';
export { thigh2015 } from './pressure/equations/thigh-2015.js';
export { thigh2019 } from './pressure/equations/thigh-2019.js';
export { thighIndex } from './pressure/equations/thigh-index.js';
export { widthRatio } from './pressure/equations/width-ratio.js';
export { brzycki } from './strength/equations/brzycki.js';
export { epley } from './strength/equations/epley.js';
