import type { Catalogue } from '../answer/messages.js';
import { planMessages } from './messages.js';

/** The sentences of `nextStage`. */
export const stageMessages = {
  'stage-next': 'In the published order, {next} follows {stage}.',
  'stage-next-practice': 'In common practice, {next} follows {stage}. The published aim is high load alone.',
  'stage-top': 'High load alone is the last stage. The published text names it as the aim.',
  'stage-not-permission': 'An order is not a permission. The practitioner decides whether and when.',
} as const satisfies Catalogue;

/** What reviews, records, proposals and comparisons say, and the reader of documents. */
const laterMessages = {
  'review-above': '{where}: {name} {found}{of} is high: {range} in {guideline}.',
  'review-below': '{where}: {name} {found}{of} is low: {range} in {guideline}.',
  'review-heavy':
    '{where}: {name} {found}{of} is heavy, and {guideline} is for light loads ({range}). Heavy exercises were not compared with it.',
  'review-clears-no-one':
    'This compares the document with published figures. A figure inside a range is not a permission, and one outside is not a verdict.',
  'review-no-cuff': 'No light exercise here has a cuff, so no range applies.',
  'review-partial': 'Only what is in the document was compared.',

  'record-clears-no-one': 'This records what was done. It does not clear anyone to train.',
  'symptom-lower': 'Reported: {symptom}. Do less next time ({lower}). See a clinician if it comes back or gets worse.',
  'pain-back-off': 'Pain of {pain} out of 10 ({site}, {moment}) is above {line}: go back. Rule: {rule}.',
  'pain-hold': 'Pain of {pain} out of 10 ({site}, {moment}) is above {line}: hold. Rule: {rule}.',
  'pain-back-off-rose':
    'Pain of {pain} out of 10 ({site}, {moment}) is higher than the {before} before the session: go back. Rule: {rule}.',
  'pain-hold-rose':
    'Pain of {pain} out of 10 ({site}, {moment}) is higher than the {before} before the session: hold. Rule: {rule}.',
  'session-shorter-than-sets':
    'The session is recorded as {session} s, and its sets at the planned tempo take {sets} s. Check both.',
  'stopped-early': '{exercise}, {side} {limb}: stopped early.',
  'held-above-target':
    '{exercise}, {side} {limb}: the cuff was held at {held} mmHg, above the {target} mmHg of the plan.',
  'held-below-target':
    '{exercise}, {side} {limb}: the cuff was held at {held} mmHg, below the {target} mmHg of the plan.',
  'held-share-above':
    '{exercise}, {side} {limb}: {held} mmHg was {heldPercent:%} of the {occlusion} mmHg measured that day, above the {percentLop} % of the plan.',
  'held-share-below':
    '{exercise}, {side} {limb}: {held} mmHg was {heldPercent:%} of the {occlusion} mmHg measured that day, below the {percentLop} % of the plan.',
  'held-occludes':
    '{exercise}, {side} {limb}: the cuff was held at {held} mmHg. We take {occlusion} mmHg as the occlusion pressure of this limb, so the artery may have been closed.',
  'lifted-above-plan': '{exercise}, {side} {limb}: {lifted:unit} was lifted, above the {planned:unit} of the plan.',
  'item-not-recorded': '{exercise}, {side} {limb}: planned, and not recorded.',

  'proposal-clears-no-one':
    'This is a proposal by a named rule. It does not clear anyone to train. The practitioner decides what to do next.',
  'one-thing-at-a-time': 'On one limb, pressure and load are never raised at the same time.',
  'rule-two-for-two':
    'Every set done, and two repetitions or more above the goal in the last, in two sessions running: raise the load by 2.5–10 %.',
  'rule-all-repetitions':
    'Every planned repetition of every set done: raise the load by the smallest step you can set.',
  'rule-set-four-over-15':
    'More than 15 repetitions in set 4, taken to failure: raise the load by the smallest step you can set (5 kg in the trial).',
  'rule-two-to-ten-percent': 'One or two repetitions above the goal: raise the load by 2–10 %.',
  'rule-counts':
    'The rule counts repetitions, and these sets are by time. Nothing is raised. Longer sets are the practitioner’s choice.',
  'no-load-to-raise': 'The plan has no load to raise. A first load is the practitioner’s choice.',
  'no-record': 'No session of this exercise is recorded: nothing is raised.',
  'too-few-records':
    'The rule looks at {needed} sessions running. The last ones on record with this load and cuff: {found}.',
  'rule-met': 'The rule is met: {done} done, {goal} planned.',
  'rule-not-met': 'The rule is not met: {done} done, {goal} planned.',
  'failure-not-recorded': 'The rule needs set 4 to be taken to failure. The record does not say that it was.',
  'over-goal-not-applied':
    'Up to {most} % of 1RM with the cuff, repetitions beyond the goal tell you little: at {percentOneRepMax:%}, choose another rule.',
  'other-load-recorded': 'The last session was done with {done:unit}, and this plan has {planned:unit}: repeat first.',
  'other-pressure-recorded':
    'The last session was planned at {done} % of occlusion pressure, and this plan at {planned} %: repeat first.',
  'other-restriction-recorded': 'The last session was done with {done}, and this plan has {planned}: repeat first.',
  'hold-held-above': 'The cuff was held at {held} mmHg, above the {target} mmHg of the plan: nothing is raised.',
  'hold-held-below':
    'The cuff was held at {held} mmHg, below the {target} mmHg of the plan: the session does not count for the rule.',
  'hold-share-above':
    '{held} mmHg was {heldPercent:%} of the {occlusion} mmHg measured that day, above the {percentLop} % of the plan: nothing is raised.',
  'hold-share-below':
    '{held} mmHg was {heldPercent:%} of the {occlusion} mmHg measured that day, below the {percentLop} % of the plan: the session does not count.',
  'held-not-recorded': 'The cuff pressure of the last session is not on record, so it was not compared with the plan.',
  'pain-not-recorded': 'Pain of the last session is not on record, so we did not check it.',
  'pain-next-morning-not-recorded': 'Pain of the morning after is not on record, so we did not check it.',
  'step-not-known': 'The plan names no step between loads: the practitioner decides the size of the step.',
  'load-step-too-large':
    'The next load you can set, {next:unit}, is {points} points of 1RM above {load:unit}, and the largest step here is {largest} points.',
  'load-step-too-large-percent':
    'The next load you can set, {next:unit}, is {percent:%} above {load:unit}, and the largest step here is {largest} %, because 1RM is not known.',
  'step-in-points':
    'The step to {next:unit} is {percent:%} of the load (rule: {largest} %) but only {points} points of 1RM, which counts here.',
  'load-step-earned':
    '{repetitions} repetitions at {load:unit} match {before} at {next:unit}: the load goes up {percent:%}, a large step, with {sets} again.',
  'repetitions-at-most':
    'No set can get more repetitions: {most} are the most here, and a set to failure is not raised. Use smaller steps of load, or decide by hand.',
  'raised-above-guidance':
    '{percentOneRepMax:%} of 1RM is above the {low}–{high} % that the 2019 guideline review gives with restriction.',
  'repetitions-first': 'More repetitions come first: {from}, then {to}.',
  'no-heavier-load': 'You can set no load heavier than {load:unit}.',
  'no-lighter-load': 'You can set no load lighter than {load:unit}.',
  'fewer-sets': 'One set fewer: {from}, then {to}.',
  'back-off-by-hand': 'No load and no set can go down here. Shorter sets are the practitioner’s choice.',
  'back-off-symptom': 'Reported: {symptom}. Go back.',
  'hold-symptom': 'Reported: {symptom}. This exercise has no cuff: nothing is raised.',
  'back-off-failed-twice': 'Planned repetitions were missed in two sessions running ({done}; {goal} planned): go back.',
  'back-off-effort': 'The effort of the session was {effort} out of 10, the top of the scale: go back.',
  'back-off-deload': 'A lighter session was asked for: go back.',
  'pressure-lower': 'The pressure goes down to {percentLop} % of occlusion pressure.',
  'hold-long-break':
    'The last session on record was {days} days before: nothing is raised after {limit} days or more. Screen and measure again first.',
  'break-not-known': 'You gave no day for the next session, so we did not look for a long break.',
  'hold-stopped-early': 'The last session was stopped early: nothing is raised.',
  'pressure-instead': 'Pressure goes up to {percentLop} % of occlusion pressure, so the load stays.',
  'pressure-not-higher': '{percentLop} % of occlusion pressure is not above the {held} mmHg of this plan.',
  'pressure-step-too-large':
    'From {from} to {to} % of occlusion pressure is more than the largest step of {largest} points: nothing is raised. Ask for a smaller step.',
  'pressure-no-cuff': 'This exercise has no cuff, so there is no pressure to raise.',
  'pressure-raised-on-limb': 'Pressure goes up on the {side} {limb} in another exercise, so the load stays.',
  'other-side-holds': 'Both sides share this exercise, and the {side} {limb} does not go up: nothing is raised.',
  'pressure-last': 'Repetitions come first, then load, pressure last.',
  'measure-occlusion-changed':
    'Measure the occlusion pressure of the {side} {limb} again: {what} changed since the last session on record.',
  'measure-occlusion-estimated': 'The occlusion pressure of the {side} {limb} is an estimate: measure it.',
  'measure-occlusion-weeks': 'Measure occlusion pressure again every few weeks. We found no published number of weeks.',
  'test-maximum-weeks': 'Test the maximum again about every 4 weeks.',
  'test-maximum-due': 'The maximum is {days} days old: test it again, about every 4 weeks.',

  'weeks-clear-no-one':
    'This adds up weeks. It does not clear anyone to train. The practitioner decides what to do next.',
  'weeks-no-one-road':
    'We found no single published way from light load with restriction to heavy load without. We do not claim that any week here equals another.',
  'both-raised':
    '{exercise}, {side} {limb}: load and pressure both go up from week {from} to week {to}; raise one thing at a time.',

  'load-jump':
    '{exercise}, {side} {limb}: load goes up by {points} points of 1RM from week {from} to week {to}, more than {largest}.',
  'load-jump-percent':
    '{exercise}, {side} {limb}: load goes up by {percent:%} from week {from} to week {to}, more than {largest} %.',
  'pressure-jump':
    '{exercise}, {side} {limb}: pressure goes up by {points} points of LOP from week {from} to week {to}, more than {largest}.',
  'deload-not-lighter':
    '{side} {limb}: week {to} is marked as a deload, and neither volume load nor minutes under the cuff are below week {from}.',

  'other-exercise-recorded': 'Another exercise was done that day ({exercise}), so nothing is raised.',

  'lighter-no-promise':
    'This is arithmetic. We do not know whether any option has the effect of the session as planned. The practitioner decides.',
  'lighter-than-asked': 'You cannot set a load that is {asked} % lighter: this one is {reached:%} lighter.',
  'lighter-not-counted': 'A set is by time, so there are no repetitions to add.',
  'lighter-too-many': 'So light a load would need more than 200 repetitions for the same volume load.',
  'lighter-reserve-not-known':
    'No equation gives repetitions to failure at both loads: it needs 1RM, and 1 to 20 repetitions to failure.',
  'lighter-reserve-passed':
    'A set has more repetitions than the {repetitions} to failure that the equation gives. By the equation, none is in reserve.',
  'lighter-reserve-without-cuff':
    'The equation for repetitions to failure comes from sets without a cuff. Under the cuff people reach failure earlier.',
  'lighter-minutes-passed':
    'Even one repetition in each set passes the {high} min under the cuff that guidance gives. The plan has {minutes:min}.',
  'lighter-no-cuff': 'The plan has no cuff with a percentage for this limb, so no option adds one.',

  'document-unverified':
    'Another version of the library ({version}) made this document, and this version did not calculate its numbers again. Make it again before you use it.',
} as const satisfies Catalogue;

/** Every sentence of this layer, but for those of the screening. A plan alone needs few of them. */
export const documentMessages = { ...planMessages, ...stageMessages, ...laterMessages };

export type PlanCode = keyof typeof documentMessages;
