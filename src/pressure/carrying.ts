import type { Limb, Posture } from '../quantity/quantities.js';
import type { CuffClass, OcclusionEquation } from './equation.js';

/*
 * What it costs to carry an equation to where it was not fitted, as shares of the answer (standard deviation).
 * Every figure is `derived`: docs/working/carrying-error.ts works it out from published group means.
 */

/** On the thigh a cuff below this is called narrow (`practice`; the published narrow cuffs are 5 cm). */
export const NARROW_CM = 8;
/** Cuffs that the published wide thigh cuffs stand for [cm]. */
export const WIDE_THIGH_CM = { low: 11, high: 20 } as const;
/** A cuff counts as the width an equation was fitted with when it is within this of it [cm]. */
export const WIDTH_TOLERANCE_CM = 0.5;

/** How far laboratories differ with the same kind of cuff: between-study standard deviation of ln(mean). */
export const LABORATORY_SHARE: Readonly<Record<CuffClass, number>> = {
  'thigh-narrow': 0.25,
  'thigh-wide': 0.13,
  arm: 0.11,
};

/** Another cuff width, for each unit of |ln(from / to)|: root mean square over eight published width pairs. */
export const WIDTH_SHARE = 0.48;

/** Another posture, on the thigh: root mean square of |ln| of the published ratios. On the arm no figure is at hand. */
const POSTURE_SHARE = { 'seated supine': 0.15, 'standing supine': 0.26, 'seated standing': 0.17 } as const;

export const postureShare = (from: Posture, to: Posture): number =>
  from === to ? 0 : POSTURE_SHARE[[from, to].sort().join(' ') as keyof typeof POSTURE_SHARE];

export const cuffClass = (limb: Limb, cuffWidthCm: number): CuffClass =>
  limb === 'arm' ? 'arm' : cuffWidthCm < NARROW_CM ? 'thigh-narrow' : 'thigh-wide';

/** The posture an equation is carried from; one that was not stated counts as supine, as most of the published means were. */
export const homePosture = ({ posture }: OcclusionEquation, asked: Posture): Posture =>
  posture === 'any' ? asked : posture === 'none' || posture === 'not-stated' ? 'supine' : posture;

/** The width an equation is carried from. */
export function homeWidth({ cuffWidthCm: fitted }: OcclusionEquation, asked: number): number {
  if (fitted === 'any') return asked;
  return typeof fitted === 'number' ? fitted : Math.min(Math.max(asked, fitted.low), fitted.high);
}
