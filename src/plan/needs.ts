/** What documents and their requests are asked for: a constant each, so that an app ships those it uses. */
export const PLAN_REQUEST = ['plan-request', 'a request for a plan, as plain JSON'] as const;
export const RECORD_REQUEST = ['record-request', 'what was done of a plan, as plain JSON'] as const;
export const SCREENING_ANSWERS = ['screening-answers', 'answers to a screening, as plain JSON'] as const;
export const DAY_ANSWERS = ['day-answers', 'answers on the day, as plain JSON'] as const;
export const OUR_DOCUMENT = ['our-document', 'a document of this library, as plain JSON'] as const;
export const OUR_PLAN = ['our-plan', 'a plan of this library'] as const;
export const OUR_PROPOSAL = ['our-proposal', 'a proposal of this library'] as const;
export const OUR_RECORDS = ['our-records', 'a list of records of this library'] as const;
export const WITH_STOPS = ['with-stops', 'a plan, a record, a review or a proposal, as plain JSON'] as const;
export const STOPS = ['stops', 'a list of stops'] as const;
export const A_STOP = ['a-stop', 'a stop, with its code'] as const;
export const DECISIONS = ['decisions', 'a list of decisions about stops'] as const;
export const A_WHOLE_NUMBER = ['whole-number', 'a whole number'] as const;
export const A_LIST = ['a-list', 'a list'] as const;
export const A_TEXT = ['a-text', 'text'] as const;
export const OF_TYPE = ['of-type', 'of type {types}'] as const;
export const OF_ONE_FORM = ['of-one-form', 'of one of the forms of the schema'] as const;
export const LEAST_LENGTH = ['least-length', 'a list of at least {least}'] as const;
export const MOST_LENGTH = ['most-length', 'a list of at most {most}'] as const;
export const TEXT_OF = ['text-of', 'text of 1 to {most} characters'] as const;
export const WORDING_OF = ['wording-of', 'text of 1 to {most} characters, not only spaces'] as const;
export const LINE_OF = ['line-of', 'one line of 1 to {most} characters, not only spaces'] as const;
export const POINTER = ['pointer', 'a place in answers, such as /answers/0'] as const;
export const VERSION = ['version', 'a version such as 0.1.0'] as const;
export const KNOWN_VERSION = ['known-version', 'a version of {current} or less that is known'] as const;
export const KNOWN_CODE = ['known-code', 'a code of this version with all its values'] as const;
export const FROM_NOTHING = ['zero-or-more', '0 or more'] as const;
export const THE_SAME = ['the-same', '{value}'] as const;
export const LIST_LENGTH = ['list-length', 'a list of {length}'] as const;
export const ONE_OF_AVAILABLE = ['one-of-available', 'one of the loads available'] as const;
export const MULTIPLE_OF = ['multiple-of', 'a multiple of {step}'] as const;
export const WITHIN_STEP = ['within-step', 'within {step} of {from}'] as const;
export const WITH_PRESSURE_STOP = [
  'with-pressure-stop',
  'a list with the stop of a pressure above those of trials',
] as const;
export const NO_OTHER_STOP = ['no-other-stop', 'other than stop, or one of the stops'] as const;
export const STOP_IN_FORCE = ['stop-in-force', 'stop while a stop is in force'] as const;
export const LEFT_OUT_AT_STOP = ['left-out-at-stop', 'left out where the action is stop'] as const;
export const NOT_RAISED = ['not-raised', 'at most {value}, since its percentage is not raised'] as const;
export const RAISED = ['raised', 'at least {value}, since its percentage is raised'] as const;
export const BY_PERCENTAGE = ['by-percentage', 'at most {value}, by its percentage'] as const;
export const CUFF_RAISED = ['cuff-raised', 'at most {value}, since the cuff pressure of this limb is raised'] as const;
export const AGAIN = ['again', '{value}, as its answers give; answer the questions again'] as const;
export const OF_LIMB = ['of-limb', 'an occlusion pressure of the {limb}'] as const;
export const WIDTH_FOR_CUFF = ['width-for-cuff', 'given, since an exercise has the cuff of this limb up'] as const;
export const LEFT_OUT_IN_MODE = ['left-out-in-mode', 'left out in {mode} exercise'] as const;
export const LEFT_OUT_FOR_LOAD = ['left-out-for-load', 'left out when load is an answer, which has its own'] as const;
export const LEFT_OUT_WITHOUT_LOAD = ['left-out-without-load', 'left out unless oneRepMax or load is given'] as const;
export const LEFT_OUT_UNLIFTED = ['left-out-unlifted', 'left out when nothing is lifted'] as const;
export const LEFT_OUT_SET_LOAD = ['left-out-set-load', 'left out when the set has a load'] as const;
export const ONE_WAY_TO_LIFT = [
  'one-way-to-lift',
  'given with percentOneRepMax, or else load, bodyMassPercent or unloaded: true',
] as const;
export const LOWER_IN_RESTS = [
  'lower-in-rests',
  'given, since the cuff goes to a lower pressure in the rests',
] as const;
export const BY_TIME = ['by-time', "by time in every set, such as '5x2min'"] as const;
export const LISTED_LIMB = ['listed-limb', 'a limb and side listed in limbs'] as const;
export const LISTED_ONCE = ['listed-once', 'a limb and side listed once'] as const;
export const OR_OF_LIMB = ['or-of-limb', 'given, or percentLop of the limb'] as const;
export const BELOW_SETS = ['below-sets', 'below the {value:unit} of the sets'] as const;
export const ABOVE_RESTS = ['above-rests', 'above the {value:unit} of the rests'] as const;
export const NOT_AFTER_PLAN = ['not-after-plan', 'not after {date}, the day of the plan'] as const;
export const NOT_AFTER_SESSION = ['not-after-session', 'not after {date}, the day of this session'] as const;
export const NOT_AFTER = ['not-after', 'not after {date}'] as const;
export const NOT_BEFORE_PLAN = ['not-before-plan', 'not before {date}, the day of the plan'] as const;
export const NOT_BEFORE_MEASURED = [
  'not-before-measured',
  'not before {date}, the day of a measured pressure of the plan',
] as const;
export const NOT_BEFORE_RECORD = ['not-before-record', 'not before {date}, the day of the last record'] as const;
export const NOT_BEFORE_STOP = ['not-before-stop', 'not before {date}, the day of the stop'] as const;
export const LEFT_OUT_NO_LOAD = ['left-out-no-load', 'left out, because the plan has no load here'] as const;
export const LEFT_OUT_NO_CUFF = ['left-out-no-cuff', 'left out, because the plan has no cuff here'] as const;
export const LEFT_OUT_NO_REST = ['left-out-no-rest', 'left out, because the plan has no lower pressure here'] as const;
export const NO_TEMPO = ['no-tempo', 'given, because the plan has no tempo'] as const;
export const NO_REST = ['no-rest', 'given, because the plan has no rest after this set'] as const;
export const OTHER_EXERCISE = [
  'other-exercise',
  'given, or else unloaded: true, because another exercise was done',
] as const;
export const UNLESS_PLANNED = ['unless-planned', 'given, unless asPlanned says that it was done as planned'] as const;
export const ITEM_OF_PLAN = [
  'item-of-plan',
  'an item of the plan, recorded no more often than it is planned: {items}',
] as const;
export const OTHER_SESSION = [
  'other-session',
  'another session than records[{index}]: number two like sessions of one day with sessionOfDay',
] as const;
export const OTHER_NUMBER = ['other-number', 'another number than that of records[{index}], of the same day'] as const;
export const OF_PLAN = ['of-plan', 'that of the plan, {value}'] as const;
export const WEEKS = ['weeks', 'a list of weeks, each with its sessions or records'] as const;
export const SESSIONS = ['sessions', 'a list of sessions, each a plan'] as const;
export const PLANNED_OR_DONE = ['planned-or-done', 'planned sessions, or records, or both'] as const;
export const TRUE_OR_NOT = ['true-or-left-out', 'true, or left out'] as const;
export const SIDE_OF_COMPARISON = [
  'side-of-comparison',
  'a plan, a record, `of` one of them with an exercise, or a session',
] as const;
export const ITEM_WITH_PLACE = ['item-with-place', '{ of: the plan or record, exercise, limb, side }'] as const;
export const EXERCISE_NAME = ['exercise-name', 'the name of an exercise'] as const;
export const ONE_ITEM = ['one-item', 'one that fits a single item of {items}'] as const;
export const WITH_ITEMS = ['with-items', 'a document with items'] as const;
export const SESSION_LOAD = ['session-load', 'recorded: sessionRpe and sessionS in recordSession'] as const;
export const ITEMS_OF_PLAN = ['items-of-plan', 'those of this plan'] as const;
export const NOT_STOPPED = [
  'not-stopped',
  'other than stop: no further session before a clinician has looked',
] as const;
export const NOT_BACK_OFF = [
  'not-back-off',
  'other than back-off where nothing goes down: shorten the sets or lower the pressure by hand',
] as const;
export const LOAD_TO_GO_TO = ['load-to-go-to', 'the load to go to, which the practitioner decides'] as const;
export const LIFTED_STOPS = ['lifted-stops', 'lifted by a decision of a practitioner, given to nextSession'] as const;
export const GOALS = ['goals', 'a list of goals'] as const;
export const LEFT_OUT_MEASURED = ['left-out-measured', 'left out where a measure is given'] as const;
export const LEFT_OUT_NOT_LIMB = ['left-out-not-limb', 'left out unless the measure is of a limb'] as const;
export const LEFT_OUT_NOT_EXERCISE = [
  'left-out-not-exercise',
  'left out unless the measure is one of {measures}',
] as const;
export const GIVEN_WITH_MEASURE = ['given-with-measure', 'given with {measure}'] as const;
export const A_GOAL = ['a-goal', 'given, or atMost, or both'] as const;
export const CODE_OF_STOP = ['code-of-stop', 'the code of a stop here: {codes}'] as const;
export const NO_STOP = ['no-stop', 'left out: no stop is in force here'] as const;
export const DAY_OF_STOP = ['day-of-stop', 'the day of a stop of this code: {days}'] as const;
export const DAY_OF_ONE_STOP = [
  'day-of-one-stop',
  'the day of one stop, since there are several of this code: {days}',
] as const;
export const EXERCISE_ONCE = ['exercise-once', 'an exercise that the plan has once: {exercises}'] as const;
export const WITH_LOAD = ['with-load', 'an exercise with a load'] as const;
export const LESS_LIGHT = ['less-light', 'less: no load you can set is so light'] as const;
