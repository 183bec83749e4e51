import { cautionsOf } from '../answer/sentences.js';
import type { DayCode, ScreeningCode } from '../answer/codes.js';
import type { Catalogue } from '../answer/messages.js';

/** What a yes to a question of `screen` leads to. */
const conditionMessages = {
  'venous-thromboembolism':
    'Blood clot in a vein or in the lung, now or in the past: see a doctor before you train with a cuff.',
  thrombophilia: 'Known clotting disorder: see a doctor before you train with a cuff.',
  'limb-paralysis':
    'Leg paralysed or weak from a nerve or brain disease: ask your doctor before you train with a cuff.',
  'cancer-within-5-years': 'Cancer in the last 5 years: ask your doctor before you train with a cuff.',
  'intensive-care': 'Stay in intensive care: ask your doctor before you train with a cuff.',
  immobile: 'In bed or unable to walk for a day or longer: ask your doctor before you train with a cuff.',
  pregnancy: 'Pregnancy: see a doctor before you train with a cuff.',
  'after-birth': 'The weeks after giving birth: see a doctor before you train with a cuff.',
  'sickle-cell': 'Sickle-cell disease or trait: see a doctor before you train with a cuff.',
  'heart-failure':
    'Heart failure of class III or IV, or an ejection fraction below 30 %: see a doctor before you train with a cuff.',
  'unstable-heart': 'Unstable angina, or a heart attack: see a doctor before you train with a cuff.',
  arrhythmia: 'Ventricular arrhythmia that is not under control: see a doctor before you train with a cuff.',
  'heart-inflammation': 'Myocarditis, endocarditis or pericarditis: see a doctor before you train with a cuff.',
  'peripheral-artery-disease': 'Peripheral artery disease: see a doctor before you train with a cuff.',
  'aortic-aneurysm': 'Abdominal aortic aneurysm: see a doctor before you train with a cuff.',
  'low-exercise-capacity': 'Exercise capacity below 6 METs: see a doctor before you train with a cuff.',
  'drop-on-standing':
    'Blood pressure that falls by 20 mmHg on standing, with symptoms: see a doctor before you train with a cuff.',
  'high-cholesterol':
    'Total cholesterol above 310 mg/dl, or LDL above 190 mg/dl: see a doctor before you train with a cuff.',
  'acute-illness':
    'Acute illness of the whole body, such as one with fever: see a doctor before you train with a cuff.',
  'kidney-disease': 'Chronic kidney disease or kidney failure: see a doctor before you train with a cuff.',
  'fistula-or-graft':
    'Dialysis fistula or arterial graft in a limb that trains: see a doctor before you train with a cuff.',
  'cancer-in-limb': 'Active cancer in a limb that trains: see a doctor before you train with a cuff.',
  'lymph-trouble': 'Lymphoedema, or lymph nodes removed: see a doctor before you train with a cuff.',
  'infection-or-wound':
    'Infection or open wound where the cuff or the exercise goes: see a doctor before you train with a cuff.',
  'surgery-or-fracture':
    'Operation or broken bone that the surgeon has not released: see a doctor before you train with a cuff.',
  'surgery-released':
    'Operation or broken bone that the surgeon has released: ask your doctor before you train with a cuff.',
  'unusual-swelling': 'Unusual swelling or pain in a limb: see a doctor before you train with a cuff.',
  'compartment-syndrome': 'Suspected exertional compartment syndrome: see a doctor before you train with a cuff.',
  hypertension: 'High blood pressure, found or treated: ask your doctor before you train with a cuff.',
  diabetes: 'Diabetes: ask your doctor before you train with a cuff.',
  'rheumatoid-arthritis': 'Rheumatoid arthritis: ask your doctor before you train with a cuff.',
  'recent-covid-19': 'Recent COVID-19: ask your doctor before you train with a cuff.',
  'oral-contraceptives': 'Oral contraceptives: ask your doctor before you train with a cuff.',
  'anabolic-steroids': 'Anabolic steroids: ask your doctor before you train with a cuff.',
  'clotting-medicines': 'Medicines that raise the risk of clots: ask your doctor before you train with a cuff.',
  'varicose-veins': 'Varicose veins: ask your doctor before you train with a cuff.',
  'first-session':
    'First training, or new to lifting: use low pressure, one exercise and fewer sets, and stop before failure. Muscle breakdown has been reported after a first session.',
} as const satisfies Record<ScreeningCode, string>;

/** What a yes to a question of `checkDay` leads to. */
const dayMessages = {
  'today-new-condition':
    'A new illness, injury, medicine or pregnancy since the screening: do not train today. Screen again.',
  'today-chest':
    'Chest pain, fainting or unusual breathlessness since the last session: do not train. Call the emergency number if it is there now. Otherwise see a doctor today.',
  'today-dark-urine':
    'Dark urine, or extreme soreness or weakness, since the last session: do not train. Call the emergency number if your urine is dark. Otherwise see a doctor today.',
  'today-swelling': 'One arm or leg swollen, hot or unusually painful: do not train. See a doctor today.',
  'today-sensation': 'Numbness, tingling or weakness in a limb: do not train with a cuff. See a doctor first.',
  'today-circulation':
    'A limb that is cold, white or blue, or skin slow (over 3 s) to get its colour back: do not train with a cuff. See a doctor first.',
  'today-skin': 'An open wound or an infection where the cuff goes: do not use a cuff there. See a doctor first.',
  'today-bruises': 'Bruises or a rash where the cuff goes: ask the practitioner before you use a cuff there.',
  'today-illness': 'Fever or illness: do not train today. Ask a doctor before the next session.',
} as const satisfies Record<DayCode, string>;

/**
 * The questions, in words that a person of twelve years understands. The window of 3 months is practice: clots were
 * counted for so long after a stay in hospital in the source of the score (Chest 2011;140:706–714).
 */
export const questionMessages = {
  'ask-ageYears': 'How old are you?',
  'ask-systolicMmHg': 'What is your upper (systolic) blood pressure at rest?',
  'ask-diastolicMmHg': 'What is your lower (diastolic) blood pressure at rest?',
  'ask-painNow': 'How strong is your pain now, from 0 (none) to 10 (worst)?',
  'ask-venous-thromboembolism': 'Have you ever had a blood clot in a vein or in your lung?',
  'ask-thrombophilia': 'Has a doctor found that your blood does not clot as it should?',
  'ask-limb-paralysis': 'Is one of your legs paralysed, or weak from a nerve or brain disease?',
  'ask-cancer-within-5-years': 'Have you had cancer in the last 5 years?',
  'ask-intensive-care': 'In the last 3 months, have you been in intensive care?',
  'ask-immobile': 'In the last 3 months, have you been in bed, or unable to walk, for a day or longer?',
  'ask-pregnancy': 'Are you pregnant, or could you be?',
  'ask-after-birth': 'Have you given birth in the last weeks?',
  'ask-sickle-cell': 'Do you have sickle-cell disease, or carry the gene for it?',
  'ask-heart-failure': 'Do you have a weak heart (heart failure), so that a little effort leaves you breathless?',
  'ask-unstable-heart':
    'Have you had a heart attack, or do you get heart pain (angina) at rest or more often than before?',
  'ask-arrhythmia': 'Do you have a dangerous heart rhythm (ventricular arrhythmia) that is not under control?',
  'ask-heart-inflammation': 'Is your heart inflamed (myocarditis, endocarditis or pericarditis)?',
  'ask-peripheral-artery-disease': 'Has a doctor found narrowed arteries in your legs or arms?',
  'ask-aortic-aneurysm': 'Has a doctor found a bulge in the main artery in your belly (aortic aneurysm)?',
  'ask-low-exercise-capacity': 'Has an exercise test shown a fitness below 6 METs?',
  'ask-drop-on-standing': 'Do you get dizzy when you stand up, because your blood pressure falls by 20 mmHg?',
  'ask-high-cholesterol': 'Has a blood test shown total cholesterol above 310 mg/dl, or LDL above 190 mg/dl?',
  'ask-acute-illness': 'Are you ill now, for example with a fever?',
  'ask-kidney-disease': 'Do you have kidney disease or kidney failure?',
  'ask-fistula-or-graft': 'Do you have a dialysis fistula, or a replaced artery, in an arm or leg that will train?',
  'ask-cancer-in-limb': 'Do you have cancer in an arm or leg that will train?',
  'ask-lymph-trouble': 'Do you have swelling from lymph (lymphoedema), or were lymph nodes taken out?',
  'ask-infection-or-wound': 'Do you have an infection or an open wound where the cuff goes or where you will train?',
  'ask-surgery-or-fracture':
    'Have you had an operation or a broken bone, and the surgeon has not yet let you exercise?',
  'ask-surgery-released': 'Have you had an operation or a broken bone, and the surgeon lets you exercise?',
  'ask-unusual-swelling': 'Is an arm or leg swollen or painful in an unusual way?',
  'ask-compartment-syndrome':
    'Does a doctor think that pressure builds up in your muscle when you exercise (compartment syndrome)?',
  'ask-hypertension': 'Do you have high blood pressure, or take medicine for it?',
  'ask-diabetes': 'Do you have diabetes?',
  'ask-rheumatoid-arthritis': 'Do you have rheumatoid arthritis?',
  'ask-recent-covid-19': 'Have you had COVID-19 recently?',
  'ask-oral-contraceptives': 'Do you take the pill for birth control?',
  'ask-anabolic-steroids': 'Do you take anabolic steroids?',
  'ask-clotting-medicines': 'Do you take a medicine that makes blood clots more likely?',
  'ask-varicose-veins': 'Do you have varicose veins?',
  'ask-first-session': 'Are you new to lifting, or is this your first training with a cuff?',
  'ask-today-new-condition': 'Since your screening, is something new: an illness, an injury, a medicine, a pregnancy?',
  'ask-today-chest': 'Since the last session, have you had chest pain, fainted, or been unusually breathless?',
  'ask-today-dark-urine':
    'Since the last session, has your urine been dark, or have your muscles been extremely sore or weak?',
  'ask-today-swelling': 'Is one arm or leg swollen, hot or unusually painful?',
  'ask-today-sensation': 'Is an arm or leg numb, tingling or weak?',
  'ask-today-circulation':
    'Is an arm or leg cold, white or blue? Press a nail: does its colour take more than 3 s to come back?',
  'ask-today-skin': 'Is the skin open or infected where the cuff goes?',
  'ask-today-bruises': 'Are there bruises or a rash where the cuff goes?',
  'ask-today-illness': 'Do you have a fever, or do you feel ill?',
} as const satisfies Record<`ask-${ScreeningCode | DayCode}`, string> & Catalogue;

/** Every sentence of screening and of the check of the day. */
export const screeningMessages = {
  ...conditionMessages,
  ...dayMessages,
  ...questionMessages,
  'screening-incomplete':
    'The screening is incomplete. Questions not answered: {count}. Answer them before you train with a cuff.',
  'day-check-incomplete':
    'The check of the day is incomplete. Questions not answered: {count}. Answer them before you train.',
  'day-check-other-day': 'The check of the day is of {checked}, and the session is of {date}. Check again.',
  'today-pain-severe': 'Pain of {pain} out of 10 now: do not train. See a clinician first.',
  'today-pain':
    'Pain of {pain} out of 10 now, above {line}: do less today, and leave out what hurts. Ask the practitioner.',
  'first-session-volume':
    'First session: use one exercise and fewer than {usual} sets, and stop before failure. Exercises with a cuff in this plan: {exercises}. Most sets of one: {sets}.',
  'thrombosis-score-high': 'Thrombosis score {score}, at or above {cutOff}: see a doctor before you train with a cuff.',
  'score-incomplete':
    'Items that are not answered count as 0 here. If all of them applied, the score would be {possible} of {most}.',
  'score-after-surgery':
    'You have had an operation or a broken bone. The score does not count it: do not read it as a low risk.',
} as const satisfies Catalogue;

export const screeningCaution = cautionsOf(screeningMessages);
