import type { Catalogue } from '../answer/messages.js';

/** What a check of a student’s number says, by the step that it found. */
export const teachingMessages = {
  'check-right': 'Right: {expected}.',
  'check-rounded': 'Right, rounded. The number is {expected}.',
  'check-rounded-too-far':
    'You rounded too far: {given} is too coarse for {expected}. Keep three digits until the last step.',
  'check-not-rounded':
    'You calculated {given} correctly. The last step is missing: round it to what you can set, {expected}.',
  'check-rounded-wrong-way': 'You rounded to the wrong side. Of {from}, what you can set is {expected}.',
  'check-not-a-step': '{given} is close, but you cannot set it. Round {from} to {expected}.',
  'check-percent-left-out': 'You gave the whole, not the percentage of it. Multiply by {percent} %.',
  'check-percent-left-over': 'You took what is left over: 100 % less {percent} %. Multiply by {percent} %.',
  'check-percent-divided': 'You divided by the percentage. Multiply by {percent} %.',
  'check-swapped-pressures': 'You swapped systolic and diastolic pressure.',
  'check-diastolic-left-out': 'You left out the diastolic pressure at the end. Add {diastolic} mmHg.',
  'check-posture-left-out': 'You left out the posture. That is the pressure lying down.',
  'check-swapped-lengths': 'You swapped circumference and cuff width.',
  'check-circumference-in-inches': 'You used the circumference in inches. The equation takes centimetres.',
  'check-width-in-inches': 'You used the cuff width in inches. The equation takes centimetres.',
  'check-other-equation': 'That is the answer of another equation, {other}. Use {equation}.',
  'check-reserve-left-out':
    'You left out the repetitions in reserve. Use {repetitions} repetitions: those done and those left.',
  'check-reserve-subtracted': 'You subtracted the repetitions in reserve. Add them: {repetitions} repetitions.',
  'check-one-repetition-off': 'You counted {counted} repetitions. Use {repetitions}.',
  'check-rests-left-out': 'You left out the rests between the sets. The cuff stays inflated in them.',
  'check-rest-after-last-set': 'You counted a rest after the last set. Count the rests between the sets only.',
  'check-one-phase': 'You counted only one phase of the repetition. Add all phases of the tempo.',
  'check-one-set': 'You counted only the first set. Add the repetitions of all sets.',
  'check-load-left-out': 'You counted repetitions only. Multiply by the load.',
  'check-other-unit': 'Your number is in {other}. The answer is in {unit}: {expected}.',
  'check-decimal-point': 'Your decimal point is in the wrong place.',
  'check-wrong': 'Not right: your number is {difference} from the answer. Compare your steps with the working.',
} as const satisfies Catalogue;

/** The code of a step that a check of a student’s number can find. */
export type CheckCode = keyof typeof teachingMessages;
