import { speaker } from '../answer/answer.js';
import type { Catalogue } from '../answer/messages.js';

/** What screening asks after. */
export const screeningMessages = {
  'venous-thromboembolism': 'A blood clot in a vein or in the lung, now or ever',
  thrombophilia: 'A known clotting disorder',
  'limb-paralysis': 'Paralysis or paresis (weakness from a nerve or brain disease) of a leg',
  'cancer-within-5-years': 'Cancer within the last 5 years',
  'intensive-care': 'A stay in intensive care',
  immobile: 'Immobile for a day or longer',
  pregnancy: 'Pregnancy',
  'after-birth': 'The weeks after giving birth',
  'sickle-cell': 'Sickle-cell trait or disease',
  'heart-failure': 'Heart failure of class III or IV, or an ejection fraction below 30 %',
  'unstable-heart': 'Unstable angina, or a heart attack',
  arrhythmia: 'A ventricular arrhythmia that is not under control',
  'heart-inflammation': 'Myocarditis, endocarditis or pericarditis',
  'peripheral-artery-disease': 'Peripheral artery disease',
  'aortic-aneurysm': 'An abdominal aortic aneurysm',
  'low-exercise-capacity': 'An exercise capacity below 6 METs',
  'drop-on-standing': 'A fall of 20 mmHg in blood pressure on standing, with symptoms',
  'high-cholesterol': 'Total cholesterol above 310 mg/dl, or LDL above 190 mg/dl',
  'acute-illness': 'An acute illness of the whole body, such as one with fever',
  'kidney-disease': 'Chronic kidney disease or kidney failure',
  'fistula-or-graft': 'A dialysis fistula or an arterial graft in a limb that trains',
  'cancer-in-limb': 'Active cancer in a limb that trains',
  'lymph-trouble': 'Lymphoedema, or lymph nodes removed',
  'infection-or-wound': 'An infection or an open wound where the cuff or the exercise goes',
  'surgery-or-fracture': 'Recent surgery, or a fracture, without release by the surgeon',
  'unusual-swelling': 'Unusual swelling or pain in a limb',
  'compartment-syndrome': 'Suspected exertional compartment syndrome',
  hypertension: 'High blood pressure, found or treated',
  diabetes: 'Diabetes',
  'rheumatoid-arthritis': 'Rheumatoid arthritis',
  'recent-covid-19': 'COVID-19 not long ago',
  'oral-contraceptives': 'Oral contraceptives',
  'anabolic-steroids': 'Anabolic steroids',
  'clotting-medicines': 'Medicines that raise the risk of clots',
  'varicose-veins': 'Varicose veins',
  'first-session': 'Untrained, or a first session with restriction',
} as const satisfies Catalogue;

/** The code of a condition that screening asks after. */
export type ScreeningCode = keyof typeof screeningMessages;

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
  'after-bruising': 'bruising afterwards',
  'after-dark-urine': 'dark urine afterwards',
  'after-swelling': 'swelling afterwards',
  'after-soreness': 'extreme soreness afterwards',

  'screened-refer': 'Screening found a reason to refer: no training with restriction before a clinician has decided.',
  'screened-caution': 'Screening found a reason to ask the treating clinician before training with restriction.',
  'limb-not-trained': 'The {side} {limb} is listed, and no exercise trains it.',
  'load-as-stated': 'The load is the caller’s own; it was not compared with a maximum.',
  'reperfusion-taken': 'Pauses between exercises that are not given are taken as {minutes} min with the cuffs down.',

  'screening-clears-no-one':
    'This is a list of published conditions, held against the answers given. It clears no one to train.',
  'screening-again': 'Screen again after a long break, and whenever something new comes up.',
  'screening-refer': '{condition}: refer before any training with restriction.',
  'screening-caution': '{condition}: ask the treating clinician before training with restriction.',
  'screening-first-session':
    '{condition}: low pressure, one exercise, fewer sets, not to failure. Muscle breakdown has been reported after a first session.',
  'age-60-and-over': 'Age {age}, 60 and over: ask the treating clinician before training with restriction.',
  'age-under-18': 'Age {age}, under 18: the practitioner decides.',
  'score-incomplete':
    'Items that are not answered count as 0 here; were all of them to apply, the score would be {possible} of {most}.',
  'score-no-cut-off': 'The text that was read gives points and no cut-off, so none is drawn here.',

  'review-above': '{where}: {name} {found} is above the {range} of {guideline}.',
  'review-below': '{where}: {name} {found} is below the {range} of {guideline}.',
  'review-clears-no-one':
    'This holds the document against published figures. Inside a range is not a permission, and outside one is not a verdict.',
  'review-no-cuff': 'No exercise in it has a cuff, so no range applies.',
  'review-partial': 'Only what is in the document was judged.',

  'record-clears-no-one': 'This is a record of what was done. It clears no one to train.',
  'symptom-reported': 'Reported: {symptom}. Stop, and refer before another session.',
  'pain-rose-during': 'Pain rose from {before} to {during} in the session.',
  'pain-stayed-up': 'Pain was {after} after the session and {before} before it.',
  'stopped-early': '{exercise}, {side} {limb}: stopped early.',
  'held-above-target': '{exercise}, {side} {limb}: {held} mmHg was held, above the {target} mmHg of the plan.',
  'held-occludes':
    '{exercise}, {side} {limb}: {held} mmHg was held, at or above the occlusion pressure of {occlusion} mmHg taken for this limb.',
  'lifted-above-plan': '{exercise}, {side} {limb}: {lifted} was lifted, above the {planned} of the plan.',
  'item-not-recorded': '{exercise}, {side} {limb}: planned, and not recorded.',
  'tempo-not-recorded':
    'Times are those of the planned tempo; rests that were not recorded are taken as they were planned.',
  'pressure-as-planned': 'Where the cuff pressure held was not recorded, pressure × time takes that of the plan.',

  'proposal-clears-no-one':
    'This is a proposal by a named rule. It clears no one to train; the practitioner decides what is done next.',
  'one-thing-at-a-time': 'Pressure and load are never raised at the same time.',
  'rule-two-for-two':
    'Every set done, and two repetitions or more above the goal in the last, in two sessions running: raise the load by 2.5 to 10 %.',
  'rule-all-repetitions': 'Every planned repetition of every set done: raise the load by the smallest step there is.',
  'rule-set-four-over-15':
    'More than 15 repetitions in set 4, taken to failure: raise the load by the smallest step there is (5 kg in the trial).',
  'rule-two-to-ten-percent': 'One repetition or two above the goal: raise the load by 2 to 10 %.',
  'rule-counts':
    'The rule counts repetitions and these sets are by time, so nothing is raised by it; longer sets are the practitioner’s choice.',
  'no-load-to-raise': 'There is no load to raise: a first load is the practitioner’s choice.',
  'no-record': 'No session of this exercise is recorded, so nothing is raised.',
  'too-few-records':
    'The rule looks at {needed} sessions running; the last ones on record with this load and cuff are {found}.',
  'rule-met': 'The rule is met: {done} repetitions done, {goal} planned.',
  'rule-not-met': 'The rule is not met: {done} repetitions done, {goal} planned.',
  'failure-not-recorded': 'The rule needs set 4 to be taken to failure, and the record does not say that it was.',
  'other-session-recorded': 'The last session was done with {done}, not with the {planned} of this plan.',
  'pain-not-recorded': 'Pain before and after the last session is not on record, so it was not looked at.',
  'step-not-known': 'The plan names no step between loads, so the size of the step is left to the practitioner.',
  'no-load-in-range':
    'No weight there is lies {low} to {high} % above {load}; the next one up is {next}. More repetitions come first.',
  'no-heavier-load': 'There is no heavier weight than {load}.',
  'no-lighter-load': 'There is no lighter weight than {load}.',
  'back-off-pain': 'Pain was higher after the session than before it: back off. How far is not published.',
  'back-off-without-load':
    'There is no load to take off: fewer or shorter sets, or a lower pressure, are the practitioner’s choice.',
  'hold-long-break':
    'The last session on record is {days} days back: nothing is raised. Screen again and measure again first.',
  'break-not-judged':
    'The last session on record is {days} days back; after how long a break to screen and measure again, no text that was read says.',
  'hold-pain': 'Pain rose in the session: nothing is raised.',
  'hold-stopped-early': 'The last session was stopped early: nothing is raised.',
  'pressure-instead': 'Pressure is raised to {percent} % of occlusion pressure, so the load stays.',
  'pressure-not-higher': '{percent} % of occlusion pressure is not above the {held} of this plan.',
  'pressure-no-cuff': 'This exercise has no cuff, so there is no pressure to raise.',
  'pressure-last': 'Repetitions come first, then load, pressure last.',
  'measure-occlusion-changed':
    'Measure the occlusion pressure of the {side} {limb} again: {what} changed since the last session on record.',
  'measure-occlusion-estimated': 'The occlusion pressure of the {side} {limb} is an estimate: measure it.',
  'measure-occlusion-weeks':
    'Measure occlusion pressure again every few weeks; how many weeks, no text that was read says.',
  'test-maximum-weeks': 'Test the maximum again about every 4 weeks.',
  'test-maximum-due': 'The maximum is {days} days old: test it again, about every 4 weeks.',

  'readings-carried':
    'Blood pressure, limb sizes and maxima are those of the last plan; put in new ones where they were taken.',
  'lower-of-two-sides':
    '{exercise}: both sides share one load and one pressure, so the lower of the two proposals is taken.',

  'weeks-clear-no-one':
    'This adds up planned weeks. It clears no one to train; the practitioner decides what is done next.',
  'weeks-no-one-road':
    'No one road from light with restriction to heavy without is published, and no week here is said to equal another.',
  'both-raised':
    '{exercise}, {side} {limb}: load and pressure both go up from week {from} to week {to}; raise one thing at a time.',

  'ladder-next': 'The published order has {next} after {rung}.',
  'ladder-next-practice': 'Common practice has {next} after {rung}; the published aim is high load alone.',
  'ladder-top': 'High load alone is the last rung; the published text names it as the aim.',
  'ladder-not-permission': 'An order is not a permission: the practitioner decides whether and when.',
} as const satisfies Catalogue;

export type PlanCode = keyof typeof planMessages;
export const { assumption, caution } = /* @__PURE__ */ speaker(planMessages);
