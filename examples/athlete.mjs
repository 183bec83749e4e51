// An invented athlete in the fifth week after a knee injury: one plan for both legs, printed as a page.
import { explain } from 'cuffwork/explain';
import { planSession } from 'cuffwork/plan';

const tempo = { eccentricS: 2, concentricS: 2 };

const plan = planSession({
  label: 'Athlete A (invented), week 5 after a knee injury',
  ageYears: 24,
  sex: 'female',
  systolicMmHg: 118,
  diastolicMmHg: 72,
  posture: 'seated',
  limbs: [
    // Measured with a hand-held Doppler: use a measurement wherever you can take one.
    {
      limb: 'leg',
      side: 'right',
      cuffWidthCm: 10,
      percentLop: 50,
      gaugeStepMmHg: 5,
      measured: { valueMmHg: 172, method: 'doppler', posture: 'seated', cuffWidthCm: 10 },
    },
    // The injured leg could not be measured that day: an estimate is the fallback, and its interval is wide.
    {
      limb: 'leg',
      side: 'left',
      circumferenceCm: 51,
      circumferenceSite: 'mid-limb',
      cuffWidthCm: 10,
      percentLop: 50,
      gaugeStepMmHg: 5,
    },
  ],
  exercises: [
    {
      name: 'leg extension',
      limb: 'leg',
      side: 'left',
      // Eight repetitions with 20 kg, two left in reserve: estimate the maximum.
      oneRepMax: { load: 20, repetitions: 8, repetitionsInReserve: 2 },
      percentOneRepMax: 30,
      step: 2.5,
      scheme: '30-15-15-15',
      tempo,
      restS: 30,
      restriction: 'continuous',
    },
    {
      name: 'leg press',
      limb: 'leg',
      // The maximum was tested.
      oneRepMax: { load: 80 },
      percentOneRepMax: 30,
      step: 5,
      scheme: '3x10',
      tempo,
      restS: 60,
      restriction: 'intermittent',
    },
  ],
});

console.log(explain(plan));
