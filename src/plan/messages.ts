import type { Catalogue } from '../answer/messages.js';

/** What every plan says. */
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
    'Watch the next 24 to 72 hours for dark urine, extreme soreness or one-sided swelling; refer at once.',
  'reperfuse-between-exercises': 'Let the cuff down between exercises, for at least 3 minutes.',
  'stop-numbness': 'numbness or tingling that does not settle',
  'stop-pain': 'sharp or rising pain under the cuff or in the limb',
  'stop-dizziness': 'dizziness or faintness',
  'stop-cold-limb': 'a cold or white limb',
  'stop-refill': 'capillary refill still slow (over 3 s) after release',
  'stop-chest': 'chest pain or breathlessness',
  'stop-vision': 'changed vision',
  'stop-movement': 'loss of movement',
} as const satisfies Catalogue;

export type PlanCode = keyof typeof planMessages;
