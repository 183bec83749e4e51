import { cautionsOf } from '../answer/sentences.js';
import type { Catalogue } from '../answer/messages.js';

/** What plans, screenings and checks of the day say. */
export const planMessages = {
  'not-cleared': 'This plan is arithmetic. It does not clear anyone to train.',
  'local-codes-decide':
    'Local codes, the treating clinician and a licensed practitioner decide. Where they differ from this page, they win.',
  'screen-first':
    'Screen before the first session: clots or clotting disorders, pregnancy and the weeks after birth, sickle cell, heart and arterial disease, high blood pressure, kidney disease, diabetes, cancer or lymph trouble in the limb, open wounds or infection, a fistula or graft, recent surgery or fracture without release, age 60 and over, medicines that raise clotting risk.',
  'supervise-first-sessions':
    'First sessions: low pressure, one exercise, fewer sets, not to failure. Muscle breakdown has been reported after a first session.',
  'side-effects-usual':
    'Soreness, numbness, dizziness and bruising are the side effects practitioners report most often.',
  'watch-afterwards':
    'Watch the next 24 to 72 hours. Call the emergency number for dark urine. See a doctor at once for extreme soreness or one-sided swelling.',
  'reperfuse-between-exercises': 'Deflate the cuff between exercises, for at least 3 minutes.',
  'burn-usual':
    'Usual: burning in the muscle that fades within a minute of deflation, and mild soreness for a day or two.',
  'symptom-chest-pain': 'chest pain, pressure or tightness',
  'symptom-breathlessness': 'breathlessness that does not settle when you rest',
  'symptom-fainting': 'fainting',
  'symptom-vision': 'changed vision',
  'symptom-movement': 'loss of movement',
  'symptom-limb-stays-cold': 'a limb that stays cold, white or blue after deflation',
  'symptom-dark-urine': 'dark brown or red urine in the days after',
  'symptom-numbness-stays': 'numbness or tingling that stays after deflation',
  'symptom-sharp-pain': 'sharp or stabbing pain in the limb',
  'symptom-slow-refill':
    'skin that takes more than 3 s to get its colour back after you press it, with the cuff deflated',
  'symptom-dizziness-stays': 'dizziness that stays after you stop',
  'symptom-pain-out-of-proportion': 'muscle pain or weakness in the days after, far beyond what the session explains',
  'symptom-swelling': 'one limb still swollen the next day',
  'symptom-bruising-spreads': 'bruising that spreads beyond the cuff',
  'symptom-dizziness': 'dizziness that passes when you rest',
  'symptom-limb-turns-cold': 'a limb that turns cold or white and recovers after deflation',
  'symptom-tingling':
    'tingling or numbness that stays while the cuff is inflated, and goes away within minutes of deflation',
  'symptom-bruising': 'small bruises or red spots under the cuff',
  'symptom-soreness': 'muscle soreness that is still there at the next session',

  'limb-not-trained': 'The {side} {limb} is listed, and no exercise trains it.',

  'screening-clears-no-one':
    'We compared the answers with a list of published conditions. This is no clearance to train.',
  'screening-again': 'Screen again after a long break, and whenever something new comes up.',
  'age-60-and-over': 'Age {age}, 60 and over: ask the treating clinician before training with restriction.',
  'age-under-18': 'Age {age}, under 18: the practitioner decides.',

  'code-unknown': 'This version of the library does not know this remark. Read it with the version that made it.',

  // Stops of a record, which the next plan keeps.
  'symptom-emergency': 'Reported: {symptom}. Stop, and call the emergency number now.',
  'symptom-clinician-first': 'Reported: {symptom}. Stop, and see a clinician before another session.',
  'pain-severe':
    'Pain of {pain} out of 10 ({site}, {moment}). Stop from {line} on, and see a clinician before another session.',
  'held-above-tried':
    '{exercise}, {side} {limb}: the cuff was held at {held} mmHg. Trials of exercise went up to about {most} mmHg. Stop, and see a clinician before another session.',
} as const satisfies Catalogue;

/** Words of the codes that stand in the values of a sentence. */
export const planValueWords = {
  'value.joint': 'joint',
  'value.tendon': 'tendon',
  'value.under-cuff': 'under the cuff',
  'value.muscle': 'muscle',
  'value.before': 'before the session',
  'value.during': 'during the session',
  'value.after': 'after the session',
  'value.nextMorning': 'the next morning',
  'value.lower-pressure': 'a lower pressure',
  'value.lower-load': 'a lighter load',
  'value.none': 'no cuff',
  'value.posture': 'the posture',
  'value.cuff': 'the cuff',
  'value.limb-size': 'the size of the limb',
  'value.cautious': 'cautious',
  'value.tendon-monitoring': 'tendon monitoring',
  'value.front-of-knee': 'front of the knee',
  'value.under-cuff-in-sets': 'under the cuff, in the sets',
} as const satisfies Catalogue;

export const caution = cautionsOf(planMessages);
