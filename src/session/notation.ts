import type { Full } from '../answer/defined.js';
import { quantities } from '../quantity/quantities.js';

/** How long each phase of a repetition takes [s]. Pauses left out are 0. */
export interface Tempo {
  /** Time to lower the load [s], 0–60. */
  readonly eccentricS: number;
  /** Pause at the bottom [s], 0–60; 0 when left out. */
  readonly bottomS?: number | undefined;
  /** Time to lift the load [s], 0–60. */
  readonly concentricS: number;
  /** Pause at the top [s], 0–60; 0 when left out. */
  readonly topS?: number | undefined;
}

// A plan’s page and a phone write the dash longer, and some the sets with slashes.
const CHAIN = /^\s*\d{1,3}(\s*[-–/]\s*\d{1,3})*\s*$/;
const TIMES = /^\s*(\d{1,2})\s*[x×]\s*(\d{1,3})\s*$/;
const TIMED_CHAIN = /^\s*\d{1,4}\s*(s|min)(\s*[-–/]\s*\d{1,4}\s*(s|min))*\s*$/;
const TIMED_TIMES = /^\s*(\d{1,2})\s*[x×]\s*(\d{1,4}\s*(s|min))\s*$/;
export const MOST_SETS = 50;

/** Four phases with dashes or slashes between them, or four digits. */
export const TEMPO = /^\s*([\dXx]{4}|([Xx]|\d{1,2}(\.\d{1,3})?)(\s*[-/]\s*([Xx]|\d{1,2}(\.\d{1,3})?)){3})\s*$/;

/** A set of a scheme: counted or timed. */
type SchemeSet = { readonly repetitions: number } | { readonly durationS: number };

const counted = (text: string): SchemeSet => ({ repetitions: Number(text) });
const timed = (text: string): SchemeSet => ({ durationS: Number.parseInt(text, 10) * (text.includes('min') ? 60 : 1) });

/** The sets of a scheme such as `30-15-15-15`, `3x10` or `5x2min`; nothing where it is none. */
export function parseScheme(scheme: string): SchemeSet[] | undefined {
  const times = TIMES.exec(scheme) ?? TIMED_TIMES.exec(scheme);
  const parts = times
    ? Array.from<string>({ length: Number(times[1]) }).fill(times[2]!)
    : CHAIN.test(scheme) || TIMED_CHAIN.test(scheme)
      ? scheme.split(/[-–/]/)
      : [];
  const sets = parts.map(/s|min/.test(scheme) ? timed : counted);
  const possible = (set: SchemeSet): boolean => {
    const [value, { min, max }] =
      'repetitions' in set ? [set.repetitions, quantities.repetitions] : [set.durationS, quantities.durationS];
    return value >= min && value <= max;
  };
  return sets.length > 0 && sets.length <= MOST_SETS && sets.every(possible) ? sets : undefined;
}

/**
 * The trade’s four-phase notation: eccentric, bottom, concentric, top. `X`, as fast as possible, has no time and is
 * `undefined` here. Three digits are refused, since it is not agreed which pause they leave out.
 */
export function parseTempo(text: string): { [phase in keyof Full<Tempo>]: number | undefined } | undefined {
  if (!TEMPO.test(text)) return undefined;
  const phases = text.trim().split(/[-/]/.test(text) ? /[-/]/ : '');
  const times = phases.map((phase) => (/x/i.test(phase) ? undefined : Number(phase)));
  if (times.some((time) => (time ?? 0) > quantities.eccentricS.max)) return undefined;
  const [eccentricS, bottomS, concentricS, topS] = times;
  return { eccentricS, bottomS, concentricS, topS };
}
