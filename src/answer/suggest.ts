import { Math } from '../quantity/maths.js';

/** At most so many options stand in a sentence, and so many are suggested. */
export const MOST_SHOWN = 5;
const MOST_LETTERS = 40;

/** What the trade calls a field or an option: letters and digits alone, then the names it may stand for. */
const ALIASES: Readonly<Record<string, string>> = {
  reps: 'repetitions sets scheme',
  weight: 'load bodyMassKg bodyMass',
  rir: 'repetitionsInReserve',
  rpe: 'reserveRpe sessionRpe',
  percent: 'percentLop percentOneRepMax',
  percentage: 'percentLop percentOneRepMax',
  percentaop: 'percentLop',
  cuffpercent: 'percentLop',
  percent1rm: 'percentOneRepMax',
  sbp: 'systolicMmHg',
  dbp: 'diastolicMmHg',
  lop: 'occlusion occlusionMmHg valueMmHg',
  aop: 'occlusion occlusionMmHg valueMmHg',
  '1rm': 'oneRepMax',
  rm: 'oneRepMax',
  girth: 'circumferenceCm',
  width: 'cuffWidthCm',
  bodyweight: 'bodyMassKg bodyMass',
  gender: 'sex',
  age: 'ageYears',
  thigh: 'leg circumferenceCm',
  upperarm: 'arm',
  sitting: 'seated',
  lying: 'supine',
  lbs: 'lb',
  pounds: 'lb',
  kgs: 'kg',
  man: 'male',
  woman: 'female',
};

const letters = (text: string): string =>
  text
    .slice(0, MOST_LETTERS)
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '');

/** Letters to put in, take out, change or swap with the next one to make one word of another (Damerau–Levenshtein). */
function editDistance(from: string, to: string): number {
  let [before, row]: number[][] = [[], Array.from({ length: to.length + 1 }, (_, at) => at)];
  for (let i = 1; i <= from.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= to.length; j += 1) {
      const same = from[i - 1] === to[j - 1] ? 0 : 1;
      const swapped = from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      next.push(
        Math.min(row![j]! + 1, next[j - 1]! + 1, row![j - 1]! + same, swapped ? before![j - 2]! + 1 : Infinity),
      );
    }
    [before, row] = [row, next];
  }
  return row![to.length]!;
}

/** How far a name is from an option: 0 for the same letters or an alias; nothing where it is no likely slip. */
function distance(given: string, option: string): number | undefined {
  const asked = letters(given);
  const name = letters(option);
  if (asked === name || (Object.hasOwn(ALIASES, asked) && ALIASES[asked]!.split(' ').includes(option))) return 0;
  const most = asked.length / 4;
  // As many letters more or fewer are as many edits at least.
  const edits = (to: string): number => {
    const longer = Math.abs(asked.length - to.length);
    return longer <= most ? editDistance(asked, to) : longer;
  };
  // A field may be written without its unit.
  const least = Math.min(edits(name), edits(letters(option.replace(/(Cm|MmHg|Kg|S)$/, ''))));
  if (least <= most) return least;
  const begins = asked.length > 2 && (name.startsWith(asked) || asked.startsWith(name.slice(0, 5)));
  const ends = asked.length > 4 && name.endsWith(asked);
  return begins || ends ? MOST_LETTERS + Math.abs(asked.length - name.length) : undefined;
}

/** The options that a name was likely meant for, the likeliest first: by case, trade name, letters, beginning and end. */
export function suggest(given: unknown, options: readonly string[]): string[] {
  if (typeof given !== 'string') return [];
  return options
    .flatMap((option) => {
      const far = distance(given, option);
      return far === undefined ? [] : [{ option, far }];
    })
    .sort((a, b) => a.far - b.far)
    .slice(0, MOST_SHOWN)
    .map(({ option }) => option);
}

/** The first of the suggestions, and those that are as likely. */
export const likeliest = (given: string, suggestions: readonly string[] = []): string[] =>
  suggestions.filter((option) => distance(given, option) === distance(given, suggestions[0]!));
