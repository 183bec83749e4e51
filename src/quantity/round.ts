import { decimal } from './decimal.js';

/** Which multiple is taken: the one not above, or the one nearest. */
export type Rounding = 'down' | 'nearest';

/** A value brought to a multiple of a step above zero, in decimals. `nearest` takes half a step up. */
export function roundToStep(value: number, step: number, rounding: Rounding): number {
  const steps = decimal(value).div(decimal(step));
  // The quotient is brought to 12 digits too: 0.3 / 0.1 must be 3 steps.
  const whole = decimal(steps.toNumber());
  return (rounding === 'down' ? whole.floor() : whole.plus(0.5).floor()).times(decimal(step)).toNumber();
}
