import type { AssumptionCode } from '../answer/codes.js';

/** The sentence of every assumption, by its code, layer by layer. */
export const assumptionTexts = {
  'normal-interval': 'The 95 % interval assumes normal errors: value ± 1.96 standard deviations.',
  'log-normal-interval':
    'The 95 % interval assumes errors that are shares of the value (log-normal): from value ÷ f to value × f, with f = exp(1.96 × standard deviation).',

  'readings-exact':
    'We take the tape and the blood-pressure reading as exact. Their own errors are not in the interval.',
  'readings-partly-exact':
    'We take these readings as exact, with no error in the interval: {fields}. We assume that the errors of readings are independent.',
  'reading-errors-given': 'You gave the errors of the readings. We assume that they are independent.',
  'circumference-site-not-checked': 'Not checked: where along the limb the circumference of the sample was measured.',
  'circumference-site-third':
    'Thigh circumference at 33 % of thigh length from the inguinal crease (from memory, unconfirmed).',
  'fitted-range-not-known': 'We do not know the range of {fields} in the sample, so we did not check it.',
  'width-taken-from-publication':
    'The abstract gives 18 cm as the “circumference” of the cuff. We take it as the width.',
  'error-from-means': 'The error is that of the formula on {count} published group means, and their spread.',
  'error-from-fit': 'The error of the equation is the residual of the sample it was fitted on.',
  'error-of-prediction':
    'The error of the equation is that of a prediction: it grows with the distance of your readings from those it was fitted to.',
  'error-of-curve': 'The curve and its errors come from {count} published group means, not from persons’ own readings.',
  'new-person-and-laboratory': 'The interval is for one new person, measured in a new laboratory.',
  'error-not-known': 'No standard deviation of its error was published, so there is no interval.',
  'laboratories-differ': 'The error includes how far laboratories differ, which we take from published group means.',
  'own-laboratory':
    'We assume that you use the equation in the laboratory that fitted it, on people like its sample. How far laboratories differ is not in the interval.',
  'arm-posture-not-known':
    'The paper does not report how much posture changes the pressure of an arm (highest seated, lowest standing). It is not in the interval.',
  'own-working': 'The pooled curve is our own working from published group means, not a published equation.',
  'nominal-person':
    'We assume that the people of each published group mean have 120/70 mmHg and a thigh of 55 cm or an arm of 32 cm.',
  'widths-assumed':
    'Two publications do not report their cuff widths. We assume 5 cm for “narrow”, 13.5 cm for “wide” and 12 cm for a surgical cuff.',
  'index-band-12': 'Published band for healthy legs with a 12 cm cuff: 1.2 to 1.4 times the systolic pressure.',
  'index-band-18': 'Published band for healthy legs with an 18 to 20 cm cuff: 1.0 to 1.2 times the systolic pressure.',
  'padding-from-caller': 'You gave the tissue padding coefficient. We have not checked it against its published table.',
  'width-ratio-bias':
    'Compared with published group means, the formula is too low with wide cuffs: 121 for 170 mmHg (thigh, 18 cm) and 111 for 133 mmHg (arm, 13 cm). It is too high with narrow cuffs on the arm: 177 for 139 mmHg (5 cm).',
  'padding-too-low': 'In 143 patients this rule fell below the measured occlusion pressure in 62 %.',
  'width-not-in-formula': 'The formula has no cuff width. Do not use it for narrow cuffs.',
  'error-between-methods': 'The error is the spread against a second method, so it includes the error of that method.',
  'error-largest-published': 'The error is the largest of the published repeat-measurement errors.',
  'error-given': 'You gave the error.',
  'ratio-to-curve-kept': 'We assume that the pressure keeps its ratio to the pooled curve above diastolic.',
  'posture-ratio': 'We assume that a posture multiplies everyone’s pressure above diastolic by the same factor.',
  'normal-update':
    'We assume that the errors of the estimate and of the measurements are independent, and normal on a log scale.',
  'estimate-holds-measuring':
    'We assume that the error of the estimate includes one measurement error of 10.6 mmHg, which is not counted again.',
  'side-error-from-thigh':
    'We assume that each side differs from the mean of both by 4.9 mmHg (standard deviation), as on the thigh in 42 people.',
  'day-error-from-thigh':
    'We assume that a person’s occlusion pressure differs from day to day by 8.5 mmHg (standard deviation), as on the thigh in 42 people.',
  'width-error-shared': 'Measurements with the same other cuff share one error of the conversion.',
  'bias-published':
    'The bias is the fitted mean of a published quality document. The document does not report how far a reading lies from it.',
  'rule-of-the-trade': 'A rule of practice: everyone with the same reading gets the same pressure.',
  'bands-without-gaps': 'From memory, the bands leave gaps. Here each reaches to the next: below 51, 56 and 60 cm.',
  'measured-posture-as-planned': 'The posture of the measurement is not given; we assume that of the plan.',
  'measured-cuff-as-planned': 'The cuff of the measurement is not given; we assume the cuff of the plan.',
  'occlusion-exact':
    'We take the occlusion pressure you entered as exact, so there is no interval. Enter an estimated or measured one to get one.',

  'one-repetition-is-the-maximum': 'A load lifted once to failure is the 1RM.',
  'reserve-added': 'We add the repetitions in reserve to the repetitions done.',
  'rational-form': 'We use the rational form with 36 and 37, not the original four-decimal form.',
  'decimal-form':
    'We use the original four-decimal form. The rational form with 36 and 37 is 0.03 % lower at 10 repetitions.',
  'constant-one-thirtieth': 'We use the constant 1/30. Other texts print 0.033 or 0.0333.',
  'retest-error': 'Error: the median coefficient of variation of repeated tests, {percent} %.',
  'first-test-error': 'Error: the typical error between a first and a second test, {percent} %.',
  'error-of-publication':
    'Error: as published with {equation}, from its own sample. Expect a larger error in other people.',
  'error-share': 'Error: {percentOneRepMax} % of 1RM, the upper end of what published comparisons found.',
  'no-error-above-ten': 'No interval: we found no published error above 10 repetitions.',
  'regression-of-its-device':
    'The intercept belongs to the device and the people of the sample. On another device the answer may be biased.',
  'regression-unit-inferred': 'We infer the unit from that of the published error.',
  'cubic-form-inferred':
    'We read the coefficients in the publication. We infer that they form a cubic in the repetitions.',
  'fitted-on': '{equation} was fitted on {sample}.',
  'equation-default': 'We use {equation}: no equation fits the lift and the person better, or you gave neither.',
  'equation-fitted':
    'We use {equation}: it was fitted on this lift, on such people and on these repetitions: {sample}.',
  'equation-compared':
    'We use {equation}: a published comparison found it among the most accurate for this lift and sex, near 80 % of 1RM.',
  'reserve-of-rating':
    'The scale gives {from} to {to} repetitions in reserve for a rating of {rating}. We use the middle.',
  'one-rep-max-exact':
    'We take the 1RM you entered as exact, so there is no interval. Enter a tested or estimated 1RM to get one.',
  'body-mass-load-exact': 'We take the share of body mass you entered as exact.',
  'body-mass-counted': 'The 1RM and the percentage include the share of body mass that is lifted.',
  'share-from-segments':
    'The share is body mass less the segments that do not move. We found no figure for its spread.',
  'chart-as-printed': 'The percentage is as printed in the {chart}.',
  'mean-propulsive-velocity': 'The velocity is the mean of the propulsive phase.',
  'mean-velocity': 'The velocity is the mean of the lifting phase.',
  'peak-velocity': 'The velocity is the peak of the lifting phase.',
  'relative-load-no-error': 'No interval: we found no error figure for {equation}.',
  'loaded-nearest': 'Target {target}: this is the nearest load you can set.',
  'loaded-not-above': 'Target {target}: this is the nearest load you can set without exceeding it.',
  'plates-in-pairs': 'Plates go on in pairs, the same on each side. A plate without a partner stays off.',

  'clock-starts-with-inflation':
    'We assume that the cuff is inflated from the first repetition, unless you give a time before it. Here, inflating and deflating take no time.',
  'sides-independent': 'We assume that the errors of the two sides are independent.',
  'tempo-kept': 'We assume that every repetition keeps the tempo.',
  'one-limb-taken': 'You named no limb, so we assume that all restriction is on the same one.',
  'standard-deviation-sample': 'The standard deviation is that of a sample: divided by n − 1, which is 6.',
  'standard-deviation-population': 'The standard deviation is that of a population: divided by n, which is 7.',
  'standard-deviation-not-reported':
    'The part of the publication that we read does not report which standard deviation it means. With the other one, monotony is 8 % different.',

  'load-as-stated': 'You gave the load. We did not compare it with a maximum.',
  'lower-load-lifted': 'Where you recorded no load, we assume the lower end of the planned range.',
  'load-range-lower':
    'The plan has a range of loads for {exercise}. Its totals count the lower end, {load:unit}; loads up to {upper:unit} are as planned.',
  'reperfusion-taken':
    'You did not give every pause between exercises. We assume {minutes} min with the cuffs deflated.',
  'tempo-not-recorded': 'We assume the planned tempo, and the planned rests where you recorded none.',
  'pressure-as-planned': 'Where you recorded no cuff pressure, pressure × time uses that of the plan.',
  'lighter-reserve-of-fresh-set':
    'Repetitions in reserve are those of a first, fresh set: {from} repetitions to failure before, {to} after. Later sets tire.',
  'readings-carried':
    'Blood pressure, limb sizes and maxima are those of the last plan. Enter new ones where you have them.',
  'lower-of-two-sides':
    '{exercise}: both sides share one load and one pressure, so we use the lower of the two proposals.',
  'screening-age-unknown': 'We do not know how old the screening is: the plan or the screening has no date.',
  'screening-dated':
    'Date of the screening: {date}. Days from then to this plan: {days}. Screen again after a long break, or when something is new.',
  'score-for-inpatients':
    'The score was made for people in hospital with an illness. It does not count operations, the pill or pregnancy. A low score is not a low risk.',
  'score-cut-offs':
    'Cut-offs of the sources: in three steps 0–1, 2–3, and 4 or more; in two steps 0–2, and 3 or more. From 3 on we refer.',
  'score-points-differ':
    'We use the points as the 2022 review prints them: age 60 and over, immobile for 1 day or longer. Its source has over 60, and 7 days or longer.',
} as const satisfies Record<AssumptionCode, string>;
