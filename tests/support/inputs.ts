/** Readings of a person that most requests for a plan have here. */
export const PERSON = { systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated' } as const;

/** A leg and an arm that most equations take. */
export const LEG = {
  limb: 'leg',
  circumferenceCm: 55,
  systolicMmHg: 120,
  diastolicMmHg: 70,
  cuffWidthCm: 12,
  posture: 'supine',
} as const;
export const ARM = { ...LEG, limb: 'arm', circumferenceCm: 32, cuffWidthCm: 5 } as const;

/** The usual chain of sets: 75 repetitions of 4 s and three rests of 30 s are 390 s. */
export const CHAIN = {
  scheme: '30-15-15-15',
  tempo: { eccentricS: 2, concentricS: 2 },
  restS: 30,
  restriction: 'continuous',
} as const;

/** The chain with a quarter of a maximum of 60 kg, which is 15 kg. */
export const EXTENSION = {
  name: 'leg extension',
  limb: 'leg',
  oneRepMax: { load: 60 },
  percentOneRepMax: 25,
  step: 2.5,
  ...CHAIN,
} as const;

/** An occlusion pressure by Doppler. */
export const measuredAt = (valueMmHg: number) => ({ valueMmHg, method: 'doppler' }) as const;

/** Two limbs that are alike. */
export const bothSides = <const T extends object>(limb: T) =>
  [
    { ...limb, side: 'left' },
    { ...limb, side: 'right' },
  ] as const;
