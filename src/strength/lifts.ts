/** A lift that some equation was fitted on, or some comparison looked at. */
export const LIFTS = [
  'bench-press',
  'chest-press',
  'shoulder-press',
  'biceps-curl',
  'triceps-dip',
  'lat-pulldown',
  'squat',
  'deadlift',
  'leg-press',
  'knee-extension',
  'knee-flexion',
  'trunk-extension',
  'trunk-flexion',
] as const;

/** A lift; `bench-press` is the barbell’s, `chest-press` that of a sample whose device is not at hand. */
export type Lift = (typeof LIFTS)[number];

/** Whether a person was used to lifting when tested. */
export const TRAINING = ['untrained', 'trained'] as const;

/** Training state, as the samples of the regressions tell it. */
export type Training = (typeof TRAINING)[number];
