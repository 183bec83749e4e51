import { CENTIMETRES_PER_INCH, KILOGRAMS_PER_POUND, PASCALS_PER_MMHG } from '../quantity/conversion-factors.js';
import { scaled } from '../quantity/decimal.js';
import { format, unitWords } from '../quantity/format.js';
import { quantityName } from '../quantity/field-quantity.js';
import { quantities, type QuantityName, type Unit } from '../quantity/quantities.js';
import { inwards, UNIT_SYSTEMS, type UnitSystem, type WrittenUnit } from '../quantity/unit-system.js';
import {
  attempt,
  describe,
  InputError,
  issue,
  MOST_ISSUES,
  pathText,
  refuse,
  type Attempt,
  type InputIssue,
  type Path,
} from './issues.js';
import {
  A_FORM,
  A_PATH,
  MESSAGE_MAKER,
  NAMED_FIELDS,
  ONE_UNIT,
  oneOf,
  OUR_FUNCTION,
  REST_OF_INPUT,
  UNITS_BY_FIELD,
} from './needs.js';
import { defined } from './defined.js';
import { optionIssue } from './field-reader.js';
import { isPart, type Part } from './part.js';
import { Reader } from './reader.js';

/** Units that a form may ask for instead of the unit of a field. */
const FORM_UNITS = {
  in: { unit: 'cm', times: CENTIMETRES_PER_INCH, over: 1 },
  lb: { unit: 'kg', times: KILOGRAMS_PER_POUND, over: 1 },
  kPa: { unit: 'mm[Hg]', times: 1000, over: PASCALS_PER_MMHG },
  min: { unit: 's', times: 60, over: 1 },
} as const satisfies Record<string, { unit: Unit; times: number; over: number }>;

/** A unit that a form asks for instead of cm, kg, mmHg or s. */
export type FormUnit = keyof typeof FORM_UNITS;

/** What {@link attemptForm} takes as its options. */
export interface FormOptions {
  /**
   * Fields that the form asks for in another unit, or `imperial` for inches and pounds everywhere; their numbers are
   * converted exactly.
   */
  readonly units?: { readonly [Field in QuantityName]?: FormUnit | undefined } | UnitSystem | undefined;
  /** The part of the input that the form does not ask for. */
  readonly given?: object | undefined;
  /** The sentence of an issue, such as that of `show` in your language; English when left out. */
  readonly message?: ((issue: InputIssue) => string) | undefined;
}

/** What {@link attemptForm} returns: what `attempt` does, with the errors by the names of the fields in the form. */
export type FormAttempt<T> = Attempt<T> & {
  /** The input that was made of the form. */
  readonly input: object;
  /** What is wrong, by the name of the field in the form; empty where nothing is. */
  readonly errors: Readonly<Record<string, string>>;
};

/** A number with a decimal comma or point, and no mark between thousands. */
const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/;
const MOST_FIELDS = 1000;
const MOST_STEPS = 12;
/** Fields that are `true` or left out: a box to tick. */
const TICKED = ['unloaded', 'lastSetToFailure', 'stoppedEarly', 'deload'];

/** What a field of a form gives: nothing where it is empty, a number where the field is one, else as it is. */
function valueOf(name: string, given: unknown, unit: FormUnit | undefined): unknown {
  if (typeof given !== 'string') return given;
  const text = given.trim();
  if (text === '') return undefined;
  if (TICKED.includes(name)) return text === 'on' || text === 'true' ? true : text;
  // What is no number stays as it is, and the function says what is wrong with it.
  if (!quantityName(name) || text.length > 40 || !NUMBER.test(text)) return text;
  const value = Number(text.replace(',', '.'));
  if (unit === undefined) return value;
  const { times, over } = FORM_UNITS[unit];
  return scaled(value, times, over);
}

/** Sets a field; never the prototype, whatever the field is called. */
const setOwn = (part: object, name: string, value: unknown): object =>
  Object.defineProperty(part, name, { value, enumerable: true, configurable: true, writable: true });

/** Puts a value at a place; lists and objects on the way are made. */
function put(root: Part, path: readonly string[], value: unknown): void {
  let part = root;
  path.forEach((step, index) => {
    const own = Object.hasOwn(part, step) ? part[step] : undefined;
    const made = typeof own === 'object' && own !== null ? own : /^\d{1,3}$/.test(path[index + 1] ?? '') ? [] : {};
    setOwn(part, step, index === path.length - 1 ? value : made);
    part = made as Part;
  });
}

function entriesOf(form: unknown): (readonly [string, unknown])[] {
  const refuseForm = (received?: string): never => refuse('wrong-type', ['form'], A_FORM, received);
  try {
    if (typeof form !== 'object' || form === null || Array.isArray(form)) return refuseForm(describe(form));
    const entries: (readonly [string, unknown])[] = [];
    const all = Symbol.iterator in form ? (form as Iterable<readonly [string, unknown]>) : Object.entries(form);
    for (const [name, value] of all) {
      if (typeof name !== 'string' || entries.length >= MOST_FIELDS) return refuseForm('too many fields');
      entries.push([name, value]);
    }
    return entries;
  } catch (error) {
    if (error instanceof InputError) throw error;
    return refuseForm('an error');
  }
}

interface ReadOptions {
  /** The unit that the form asks for a field in. */
  readonly unitOf: (name: string) => FormUnit | undefined;
  readonly given: Part;
  readonly message: ((issue: InputIssue) => string) | undefined;
}

/** Inches for centimetres and pounds for kilograms. */
const imperialUnit = (unit: Unit | undefined): FormUnit | undefined =>
  unit === 'cm' ? 'in' : unit === 'kg' ? 'lb' : undefined;

function imperialOf(name: string): FormUnit | undefined {
  const quantity = quantityName(name);
  return quantity && imperialUnit(quantities[quantity].unit);
}

/** Bounds in a unit of a form. */
function boundsIn(unit: FormUnit, min: number, max: number): readonly [min: number, max: number] {
  const { times, over } = FORM_UNITS[unit];
  return inwards(scaled(min, over, times), scaled(max, over, times));
}

function readOptions(options: unknown): ReadOptions {
  const reader = new Reader(options ?? {}, ['options']);
  const units = reader.anything('units', UNITS_BY_FIELD, true) as Record<string, unknown> | string | undefined;
  const given = reader.anything('given', REST_OF_INPUT, true);
  if (given !== undefined && !isPart(given)) reader.report('wrong-type', 'given', NAMED_FIELDS, describe(given));
  const message = reader.raw('message');
  if (message !== undefined && typeof message !== 'function')
    reader.report('wrong-type', 'message', MESSAGE_MAKER, describe(message));
  const known = Object.keys(FORM_UNITS);
  const byField = isPart(units) ? units : {};
  if (units !== undefined && !isPart(units)) reader.acceptChoice('units', UNIT_SYSTEMS, units);
  for (const [name, unit] of Object.entries(byField)) {
    const form = known.includes(unit as string) ? FORM_UNITS[unit as FormUnit] : undefined;
    const quantity = quantityName(name);
    const own = quantity && quantities[quantity].unit;
    if (form && form.unit === own) continue;
    const fits = known.filter((code) => FORM_UNITS[code as FormUnit].unit === own);
    reader.report('wrong-type', ['units', name], fits.length > 0 ? oneOf(fits) : ONE_UNIT, describe(unit));
  }
  reader.done();
  return {
    unitOf: (name) =>
      units === 'imperial' ? imperialOf(name) : Object.hasOwn(byField, name) ? (byField[name] as FormUnit) : undefined,
    given: isPart(given) ? given : {},
    message: message as ReadOptions['message'],
  };
}

/** An issue in the unit that the form asks for: its bounds, and what was typed. */
function inFormUnit(found: InputIssue, unit: FormUnit | undefined, typed: string | undefined): InputIssue {
  const { min, max, whole, code, path } = found;
  if (unit === undefined || typed === undefined || min === undefined || max === undefined) return found;
  const [low, high] = boundsIn(unit, min, max);
  const expected = `${whole ? 'a whole number' : 'a number'} from ${format(low)} to ${format(high)} ${unit}`;
  return issue(code, path, { expected }, `${typed} ${unit}`);
}

/**
 * Calls a function with what a form holds: texts become an input, and what is wrong comes back by the name of the field.
 *
 * - Numbers may have a decimal comma or point, and no mark between thousands: 1.250 is 1.25, and 1.250,5 is refused.
 * - An empty field is left out.
 * - Inches, pounds, kilopascals and minutes are converted exactly, for the fields that `units` names.
 * - A field inside is named by its place: `limbs.0.circumferenceCm` or `limbs[0].circumferenceCm`.
 *
 * @param fn - a function of this library
 * @param form - the fields by name: a `FormData`, a `Map`, or an object of texts
 * @param options - `units` by field: `in`, `lb`, `kPa` or `min`, or `imperial`; `given`, the part that the form does not ask for;
 * `message`, the sentence of an issue, such as that of `show` in your language
 * @returns the answer, or the issues; with the `input` that was made, and the `errors` by the name of the field.
 * @throws InputError for what is no form, and for a unit that a field cannot have
 *
 * @example
 * ```ts
 * import { attemptForm, estimateOcclusionPressure } from 'cuffwork';
 * const form = {
 *   limb: 'leg', circumferenceCm: '22', systolicMmHg: '120', diastolicMmHg: '', cuffWidthCm: '10,5', posture: 'seated',
 * };
 * const result = attemptForm(estimateOcclusionPressure, form, { units: { circumferenceCm: 'in' } });
 * result.input; // => { limb: 'leg', circumferenceCm: 55.88, systolicMmHg: 120, cuffWidthCm: 10.5, posture: 'seated' }
 * result.errors; // => { diastolicMmHg: 'diastolicMmHg is missing: it must be a number from 30 to 200 mmHg.' }
 * ```
 */
export function attemptForm<T>(fn: (input: never) => T, form: object, options?: FormOptions): FormAttempt<T> {
  const { unitOf, given: input, message } = readOptions(options);
  const typed = new Map<string, string>();
  /** Names in the form by the place they lead to. */
  const names = new Map<string, string>();
  for (const [field, text] of entriesOf(form)) {
    const path = field.replace(/\[(\d{1,3})\]/g, '.$1').split('.', MOST_STEPS + 1);
    const place = path.join('.');
    names.set(place, field);
    // The quantity of an item of a list is that of the list.
    const name = [...path].reverse().find((step) => !/^\d+$/.test(step)) ?? field;
    const value = valueOf(name, text, unitOf(name));
    if (typeof text === 'string') typed.set(place, text.trim());
    if (value !== undefined) put(input, path.slice(0, MOST_STEPS), value);
  }
  const brackets = [...names.values()].some((name) => name.includes('['));
  const result = attempt(fn, input);
  const errors: Record<string, string> = {};
  // The first of several for one field.
  for (const found of result.ok ? [] : result.issues) {
    const place = found.path.join('.');
    // A field that the form does not have is named as the others are.
    const field = names.get(place) ?? (brackets ? pathText(found.path) : place);
    const unit = unitOf([...found.path].reverse().find((step) => typeof step === 'string') ?? '');
    // Where inches are asked for, nobody meant inches by mistake.
    const asked = unit && found.code === 'unit-slip' ? { ...found, code: 'out-of-range' as const } : found;
    const value = message ? message(asked) : inFormUnit(asked, unit, typed.get(place)).message;
    if (!Object.hasOwn(errors, field)) setOwn(errors, field, value);
  }
  return { ...result, input, errors };
}

/** What there is to know of a field before anything is entered in it. */
export interface InputField {
  /** Name of the field. */
  readonly name: string;
  /** What it is, for a label. */
  readonly label?: string;
  /** UCUM code of its unit, such as `mm[Hg]`. */
  readonly unit?: WrittenUnit;
  /** The unit as people write it, for a label, such as `mmHg`. */
  readonly unitText?: string;
  /** Lowest value it may have [`unit`]. */
  readonly min?: number;
  /** Highest value it may have [`unit`]. */
  readonly max?: number;
  /** Present where it must be a whole number. */
  readonly whole?: true;
  /** The words it may be. */
  readonly options?: readonly string[];
  /** Whether it must be given, with what else is given. */
  readonly required: boolean;
  /** Where on the body, or with what, it is taken. */
  readonly where?: string;
  /** What it takes, in words. */
  readonly expected: string;
}

/** Where on the body a reading is taken. */
export const where = {
  circumferenceCm: 'mid-thigh or mid-arm, not under the cuff',
  circumferenceSite: 'mid-thigh or mid-arm, or under the cuff',
  systolicMmHg: 'upper arm, at rest',
  diastolicMmHg: 'upper arm, at rest',
  cuffWidthCm: 'the cuff on the limb you train',
  bladderWidthCm: 'the bladder of the blood-pressure cuff on the upper arm',
  valueMmHg: 'the limb you train, with its cuff, at rest',
  occlusion: 'the limb you train, with its cuff, at rest',
} as const satisfies Readonly<Record<string, string>>;

const NOBODY = 'a field nobody knows';

const samePath = (a: Path, b: Path): boolean => a.length === b.length && a.every((step, index) => step === b[index]);

/**
 * The fields that a function takes, as data for a form: label, unit, bounds, options, whether it must be given, and where
 * on the body it is taken. The function itself says so, so nothing can differ.
 *
 * @param fn - a function of this library that takes one object
 * @param given - what is known already, such as the limb, on which bounds may depend
 * @param path - the place of a part inside, such as `['limbs', 0]`
 * @param units - `imperial` for bounds in inches and pounds, rounded inwards, as `attemptForm` takes them
 * @returns the fields, in the order in which they are read; the unit of a load after it.
 * @throws InputError for what is no function of this library
 *
 * @example
 * ```ts
 * import { estimateOcclusionPressure, inputFields } from 'cuffwork';
 * const fields = inputFields(estimateOcclusionPressure, { limb: 'arm' });
 * const circumference = fields.find(({ name }) => name === 'circumferenceCm');
 * [circumference?.min, circumference?.max, circumference?.unit, circumference?.required]; // => [15, 70, 'cm', true]
 * circumference?.where; // => 'mid-thigh or mid-arm, not under the cuff'
 * ```
 */
export function inputFields(
  fn: (input: never) => unknown,
  given: object = {},
  path: Path = [],
  units: UnitSystem = 'metric',
): InputField[] {
  if (typeof fn !== 'function') refuse('wrong-type', ['fn'], OUR_FUNCTION, describe(fn));
  const isStep = (step: unknown): step is string | number => typeof step === 'string' || typeof step === 'number';
  if (!Array.isArray(path) || path.length > MOST_STEPS || !path.every(isStep))
    refuse('wrong-type', ['path'], A_PATH, describe(path));
  if (!UNIT_SYSTEMS.includes(units)) throw new InputError([optionIssue(['units'], UNIT_SYSTEMS, units)]);
  const steps = path.map(String);
  const issuesOf = (change: Part) => {
    const { given: input } = readOptions({ given });
    for (const [name, value] of Object.entries(change)) put(input, [...steps, name], value);
    const result = attempt(fn, input);
    return result.ok ? [] : result.issues;
  };
  const found = issuesOf({ [NOBODY]: true });
  const unknown = found.find(({ code, path: at }) => code === 'unknown-field' && at.at(-1) === NOBODY);
  const known = unknown?.options?.slice(0, MOST_ISSUES) ?? [];
  const missing = found.filter(({ code }) => code === 'missing');
  const fields = known.map((name): InputField => {
    const place = [...(unknown?.path.slice(0, -1) ?? []), name];
    const own = issuesOf({ [name]: null }).find(({ path: at }) => samePath(at, place));
    const { unit: ownUnit, min: least, max: most, whole, options, expected = 'a value' } = own ?? {};
    const form = units === 'imperial' ? imperialUnit(ownUnit) : undefined;
    const [min, max] = form && least !== undefined && most !== undefined ? boundsIn(form, least, most) : [least, most];
    const unit: WrittenUnit | undefined = form === 'in' ? '[in_i]' : form === 'lb' ? '[lb_av]' : ownUnit;
    const quantity = quantityName(name);
    return defined({
      name,
      label: quantity && quantities[quantity].name,
      unit,
      unitText: (unit !== undefined && unitWords[unit].trim()) || undefined,
      min,
      max,
      whole,
      options,
      required: missing.some(({ path: at }) => samePath(at, place)),
      where: Object.hasOwn(where, name) ? where[name as keyof typeof where] : undefined,
      expected: form ? `a number from ${min!} to ${max!} ${form}` : expected,
    });
  });
  // The unit of a load comes after it, as people write it.
  const load = fields.findIndex(({ unit }) => unit === 'kg' || unit === '[lb_av]');
  const own = fields.findIndex(({ name }) => name === 'unit');
  if (own >= 0 && load > own) fields.splice(load, 0, ...fields.splice(own, 1));
  return fields;
}
