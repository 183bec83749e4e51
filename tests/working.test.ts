import { describe, expect, it } from 'vitest';
import { corrections, deviations, widthCorrectionShare, widthRatioShare } from '../docs/working/width-ratio-error.js';
import { WIDTH_CORRECTION_SHARE } from '../src/pressure/cuff-width.js';
import { widthRatioEquation } from '../src/pressure/equations/width-ratio.js';

// The constants of grade `derived` are held to the committed working, rounded up to two digits.
describe('derived errors', () => {
  it('takes the error of the width-ratio formula from the published group means', () => {
    expect(deviations.length).toBe(8);
    expect(widthRatioEquation.error.share).toBe(Math.ceil(widthRatioShare * 100) / 100);
  });
  it('takes the error of the width correction from the published width pairs', () => {
    expect(corrections.length).toBe(6);
    expect(WIDTH_CORRECTION_SHARE).toBe(Math.ceil(widthCorrectionShare * 100) / 100);
  });
  it('says rightly which way the width correction is wrong', () => {
    for (const { fromCm, toCm, measured, corrected } of corrections) {
      expect(Math.sign(corrected - measured)).toBe(Math.sign(fromCm - toCm));
    }
  });
});
