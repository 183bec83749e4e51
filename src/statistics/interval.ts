/** A number with its 95 % confidence interval. */
export interface WithConfidence {
  /** The point value, in the unit of the statistic. */
  readonly value: number;
  /** Lower end of the 95 % confidence interval. */
  readonly lower: number;
  /** Upper end of the 95 % confidence interval. */
  readonly upper: number;
}

/** A number with its 95 % confidence interval and standard error. */
export interface WithError extends WithConfidence {
  /** Standard error of `value`, in its unit. */
  readonly standardError: number;
}

/** A value ± t standard errors. */
export const around = (value: number, standardError: number, t: number): WithError => ({
  value,
  lower: value - t * standardError,
  upper: value + t * standardError,
  standardError,
});

/** Whether a value lies outside the interval. */
export const excludes = ({ lower, upper }: WithConfidence, value: number): boolean => lower > value || upper < value;

/** The value and the ends on another scale; a standard error stays on its own. */
export const mapped = <T extends WithConfidence>(of: T, to: (number: number) => number): T => ({
  ...of,
  value: to(of.value),
  lower: to(of.lower),
  upper: to(of.upper),
});
