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

/** A lift; `bench-press` is with a barbell, `chest-press` that of a sample whose device was not reported. */
export type Lift = (typeof LIFTS)[number];

/** Whether a person is used to lifting. */
export const TRAINING = ['untrained', 'trained'] as const;

/** Training state, as the papers of the regressions report it. */
export type Training = (typeof TRAINING)[number];
