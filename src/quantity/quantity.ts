/** UCUM code of a unit, or an annotation in braces for a plain count. */
export type Unit =
  | 'mm[Hg]'
  | 'cm'
  | 'kg'
  | '[lb_av]'
  | 's'
  | 'min'
  | 'a'
  | '%'
  | '{reps}'
  | 'm/s'
  | 'mm'
  | 'kg/m2'
  | '1'
  | 'mm[Hg].min'
  | '%.min'
  | '{AU}'
  | '{sessions}';

/** What a field of the vocabulary is: its name, symbol, unit and the widest range that is possible. */
export interface Quantity {
  /** Name of the quantity. */
  readonly name: string;
  /** UCUM code of its unit. */
  readonly unit: Unit;
  /** Values outside `min` to `max` are refused as impossible; the bounds are this project's own guard (`practice`). */
  readonly min: number;
  /** Highest possible value. */
  readonly max: number;
  /** Set where only whole numbers are possible. */
  readonly whole?: true;
  /** Units a value is likely to have been given in by mistake, with the factor to `unit`. */
  readonly slips?: readonly {
    /** The mistaken unit. */
    readonly unit: string;
    /** Multiply by it to get a value in `unit` of the quantity. */
    readonly factor: number;
  }[];
}
