import type { MeasurementMethod, Posture } from 'cuffwork';
import type { PlanRequest } from 'cuffwork/plan';

/** A field: its start, the span of its slider where it is a number, and its path in the request. */
export interface Field {
  /** A number when left out. */
  readonly type?: 'text' | 'date';
  readonly label: string;
  readonly unit: string;
  readonly start: string;
  readonly slider?: readonly [min: number, max: number, step: number];
  readonly hint?: string;
  readonly path: string;
}

export const fields = {
  label: { type: 'text', label: 'Name or code', unit: '', start: '', hint: 'may stay empty', path: 'label' },
  date: { type: 'date', label: 'Day of the session', unit: '', start: '', path: 'date' },
  exercise: { type: 'text', label: 'Exercise', unit: '', start: 'leg extension', path: 'exercises.0.name' },
  measuredMmHg: {
    label: 'Measured occlusion pressure',
    unit: 'mmHg',
    start: '180',
    slider: [80, 300, 1],
    path: 'limbs.0.measured.valueMmHg',
  },
  measuredWidthCm: {
    label: 'Width of the cuff it was measured with',
    unit: 'cm',
    start: '10',
    slider: [3, 22, 0.5],
    path: 'limbs.0.measured.cuffWidthCm',
  },
  circumferenceCm: {
    label: 'Limb circumference',
    unit: 'cm',
    start: '54',
    slider: [15, 90, 0.5],
    hint: 'around the middle of the thigh or upper arm',
    path: 'limbs.0.circumferenceCm',
  },
  cuffWidthCm: {
    label: 'Width of the cuff you train with',
    unit: 'cm',
    start: '10',
    slider: [3, 22, 0.5],
    hint: 'of the part that fills with air',
    path: 'limbs.0.cuffWidthCm',
  },
  systolicMmHg: { label: 'Systolic pressure', unit: 'mmHg', start: '120', slider: [80, 220, 1], path: 'systolicMmHg' },
  diastolicMmHg: {
    label: 'Diastolic pressure',
    unit: 'mmHg',
    start: '70',
    slider: [40, 130, 1],
    path: 'diastolicMmHg',
  },
  ageYears: { label: 'Age', unit: 'years', start: '', hint: 'may stay empty', path: 'ageYears' },
  percentLop: {
    label: 'Share of occlusion pressure',
    unit: '%',
    start: '50',
    slider: [10, 100, 1],
    path: 'limbs.0.percentLop',
  },
  gaugeStepMmHg: { label: 'Step of the gauge', unit: 'mmHg', start: '5', path: 'limbs.0.gaugeStepMmHg' },
  load: { label: 'Load lifted', unit: 'kg', start: '20', slider: [2.5, 150, 2.5], path: 'exercises.0.oneRepMax.load' },
  repetitions: {
    label: 'Repetitions with it',
    unit: '',
    start: '8',
    slider: [1, 20, 1],
    hint: '10 or fewer are best; with those left in reserve, 20 at most',
    path: 'exercises.0.oneRepMax.repetitions',
  },
  repetitionsInReserve: {
    label: 'Repetitions left in reserve',
    unit: '',
    start: '2',
    slider: [0, 10, 1],
    path: 'exercises.0.oneRepMax.repetitionsInReserve',
  },
  percentOneRepMax: {
    label: 'Share of the maximum',
    unit: '%',
    start: '30',
    slider: [10, 90, 1],
    path: 'exercises.0.percentOneRepMax',
  },
  step: { label: 'Step between loads', unit: 'kg', start: '2.5', path: 'exercises.0.step' },
  scheme: {
    type: 'text',
    label: 'Repetitions, set by set',
    unit: '',
    start: '30-15-15-15',
    hint: 'such as 30-15-15-15 or 3x10',
    path: 'exercises.0.scheme',
  },
  concentricS: {
    label: 'Lifting',
    unit: 's',
    start: '2',
    slider: [0.5, 6, 0.5],
    path: 'exercises.0.tempo.concentricS',
  },
  eccentricS: { label: 'Lowering', unit: 's', start: '2', slider: [0.5, 6, 0.5], path: 'exercises.0.tempo.eccentricS' },
  restS: { label: 'Rest between sets', unit: 's', start: '30', slider: [10, 180, 5], path: 'exercises.0.restS' },
} as const satisfies Record<string, Field>;

export type FieldName = keyof typeof fields;

/** A choice of one: its label, its options, the one it starts with. */
export interface Choice {
  readonly label: string;
  readonly options: Readonly<Record<string, string>>;
  readonly start: string;
}

const postures = { supine: 'Supine', seated: 'Seated', standing: 'Standing' };

export const choices = {
  known: {
    label: 'Was the occlusion pressure measured?',
    options: { measured: 'Yes, measured', estimated: 'No, estimate it' },
    start: 'measured',
  },
  method: {
    label: 'Method',
    options: { doppler: 'Doppler', oximeter: 'Pulse oximeter', automated: 'Automatic device' },
    start: 'doppler',
  },
  measuredPosture: { label: 'Posture', options: postures, start: 'seated' },
  limb: { label: 'Limb', options: { leg: 'Leg', arm: 'Arm' }, start: 'leg' },
  side: { label: 'Side', options: { left: 'Left', right: 'Right' }, start: 'left' },
  posture: { label: 'Posture', options: postures, start: 'seated' },
  sex: { label: 'Sex', options: { '': 'Not given', female: 'Female', male: 'Male' }, start: '' },
  restriction: {
    label: 'The cuff is inflated',
    options: { continuous: 'Throughout', intermittent: 'In the sets', none: 'Not at all' },
    start: 'continuous',
  },
} as const satisfies Record<string, Choice>;

export type ChoiceName = keyof typeof choices;

const number = (text: string): number | undefined => (text === '' ? undefined : Number(text));

/** Parts of the form that are asked for: a pressure measured with another cuff is converted by the circumference. */
export function isAsked(part: string, read: (name: FieldName | ChoiceName) => string): boolean {
  if (part !== 'circumference') return part === read('known');
  return read('known') === 'estimated' || Number(read('measuredWidthCm')) !== Number(read('cuffWidthCm'));
}

/** The request that the form stands for. */
export function requestOf(read: (name: FieldName | ChoiceName) => string): PlanRequest {
  const of = (name: FieldName): number => number(read(name)) as number;
  const choice = <T extends string>(name: ChoiceName): T => read(name) as T;
  const [posture, measuredPosture] = [choice<Posture>('posture'), choice<Posture>('measuredPosture')];
  const pressure =
    read('known') === 'measured'
      ? {
          measured: {
            valueMmHg: of('measuredMmHg'),
            method: choice<MeasurementMethod>('method'),
            cuffWidthCm: of('measuredWidthCm'),
            posture: measuredPosture,
          },
        }
      : {};
  const circumference = isAsked('circumference', read) && { circumferenceCm: of('circumferenceCm') };
  return {
    ...(read('label') !== '' && { label: read('label') }),
    ...(read('date') !== '' && { date: read('date') }),
    systolicMmHg: of('systolicMmHg'),
    diastolicMmHg: of('diastolicMmHg'),
    posture,
    ageYears: number(read('ageYears')),
    sex: read('sex') === '' ? undefined : choice<'female' | 'male'>('sex'),
    limbs: [
      {
        limb: choice('limb'),
        side: choice('side'),
        ...pressure,
        ...circumference,
        cuffWidthCm: of('cuffWidthCm'),
        percentLop: of('percentLop'),
        gaugeStepMmHg: of('gaugeStepMmHg'),
      },
    ],
    exercises: [
      {
        name: read('exercise'),
        limb: choice('limb'),
        oneRepMax: {
          load: of('load'),
          repetitions: of('repetitions'),
          repetitionsInReserve: of('repetitionsInReserve'),
        },
        percentOneRepMax: of('percentOneRepMax'),
        step: of('step'),
        scheme: read('scheme'),
        tempo: { concentricS: of('concentricS'), eccentricS: of('eccentricS') },
        restS: of('restS'),
        restriction: choice<'continuous' | 'intermittent' | 'none'>('restriction'),
      },
    ],
  };
}
