import * as z from 'zod/mini';
import { DAY } from '../answer/day.js';
import { DAY_EXPECTED } from '../answer/needs.js';
import { once } from '../answer/own.js';
import { LIMBS, quantities, SIDES, type QuantityName } from '../quantity/quantities.js';
import { MOST_NAME } from '../session/prescription.js';
import { LINE_OF, TEXT_OF, WORDING_OF } from './needs.js';

// The parts that every declaration is put together from. Each declaration is made when it is first needed: importing
// makes none of them, and a bundler leaves out those that nothing uses.

/** Names for JSON Schema, in a registry of the library’s own: the one that an app shares with zod is left alone. */
export const annotations = z.registry<{ id?: string; title?: string; description?: string }>();

/** A part that is one definition of the JSON Schema, by its name. */
export const named = <T extends z.ZodMiniType>(id: string, make: () => T): (() => T) =>
  once(() => {
    const part = make();
    annotations.add(part, { id });
    return part;
  });

/** What a declaration is, where its own type is wider or written out anew. */
export const typed = <T>(type: z.ZodMiniType): z.ZodMiniType<T, T> => type as unknown as z.ZodMiniType<T, T>;

/** A number of the vocabulary: its bounds stand in one table for readers and schemas alike. */
export function quantity(name: QuantityName) {
  const { min, max, name: title, unit, ...rest } = quantities[name];
  const number = 'whole' in rest ? z.int() : z.number();
  return number
    .check(z.minimum(min), z.maximum(max))
    .register(annotations, { title, description: `UCUM unit: ${unit}` });
}

/** Numbers of the vocabulary under their own names. */
export const numbers = <N extends QuantityName>(...names: N[]) =>
  Object.fromEntries(names.map((name) => [name, quantity(name)])) as Record<N, ReturnType<typeof quantity>>;

export type Shape = Readonly<Record<string, z.ZodMiniType>>;

/** Fields that may be left out. */
export const some = <S extends Shape>(shape: S) =>
  Object.fromEntries(Object.entries(shape).map(([name, type]) => [name, z.optional(type)])) as {
    [N in keyof S]: z.ZodMiniOptional<S[N]>;
  };

export const list = <T extends z.ZodMiniType>(of: T, most: number, least = 1) =>
  z.array(of).check(...(least > 0 ? [z.minLength(least)] : []), z.maxLength(most));

/** Parts by names of any kind. `z.record` does the same with 3 kB more for an app to load. */
export const byName = <T extends z.ZodMiniType>(part: T) => z.catchall(z.object({}), part);

/** A request refuses fields it does not know: they are slips. */
export const strict = z.strictObject;
/** A document keeps fields it does not know, and never looks at them: an app or a later version put them there. */
export const open = z.looseObject as unknown as typeof z.strictObject;

/** Text by a pattern, whose message is the code of what it asks for. */
export const pattern = (regex: RegExp, [code]: readonly [code: string, english: string], most?: number) =>
  z.string().check(z.regex(regex, most === undefined ? code : `${code} ${most}`));

/** Text of at most so many characters; counted as JSON Schema counts them. */
export const text = (most: number) => pattern(new RegExp(`^[\\s\\S]{1,${most}}$`, 'u'), TEXT_OF, most);

/** Text of at most so many characters that says something. */
export const wording = (most: number) =>
  pattern(new RegExp(`^(?=[\\s\\S]*\\S)[\\s\\S]{1,${most}}$`, 'u'), WORDING_OF, most);

/** One line of a page that says something: a second line could pass for one of the library. */
export const line = (most: number) => pattern(new RegExp(`^(?=.*\\S).{1,${most}}$`, 'u'), LINE_OF, most);

/** A day of the calendar. */
export const day = named('day', () => pattern(DAY, DAY_EXPECTED));

/** A code of a catalogue, which is looked up when the document is verified. */
export const code = <C extends string>() => typed<C>(z.string());

/** A limb and its side. */
export const limbAndSide = once(() => ({ limb: z.enum(LIMBS), side: z.enum(SIDES) }));
/** An exercise on a limb. */
export const place = once(() => ({ exercise: text(MOST_NAME), ...limbAndSide() }));
