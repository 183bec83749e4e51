import { equations, type Limb } from '../../src/index.js';

/** As much of an equation’s record as the docs show. What a record may lack is left out of the page. */
interface View {
  readonly id: string;
  readonly name: string;
  readonly formula: string;
  readonly symbols: Readonly<
    Record<string, string | { readonly field: string; readonly codes?: Readonly<Record<string, number>> }>
  >;
  readonly evidence: string;
  readonly sources: readonly string[];
  readonly sample?: string;
}
interface Range {
  readonly low: number;
  readonly high: number;
}

export interface OcclusionView extends View {
  readonly limb: Limb | 'any';
  readonly cuffWidthCm: number | Range | 'any';
  readonly posture: string;
  readonly fitted: Readonly<Record<string, Range | undefined>>;
  readonly fittedNotKnown: readonly string[];
  readonly error: {
    readonly standardDeviationMmHg?: number;
    readonly share?: number | Readonly<Record<string, number>>;
    readonly curve?: { readonly error: { readonly people: number; readonly laboratory: number } };
    readonly evidence: string;
  };
}

export interface MaximumView extends View {
  readonly apply: (load: number, repetitionsToFailure: number) => number;
  readonly basis: string;
  readonly lifts?: readonly string[] | 'any';
  readonly fittedRepetitions?: Range;
  readonly unit?: string;
  readonly error?: { readonly standardDeviation: number; readonly unit: string } | { readonly share: number };
}

export const occlusionViews: readonly OcclusionView[] = equations.occlusionPressure;
export const maximumViews: readonly MaximumView[] = equations.oneRepetitionMaximum;

/** A cuff width in words. */
export const widthWords = (width: OcclusionView['cuffWidthCm']): string =>
  typeof width === 'object' ? `${width.low} to ${width.high} cm` : width === 'any' ? 'any' : `${width} cm`;

/** A width the equation may be drawn for: its own, the middle of its range, or 10 cm where any will do. */
export const drawnWidth = (width: OcclusionView['cuffWidthCm']): number =>
  typeof width === 'object' ? (width.low + width.high) / 2 : width === 'any' ? 10 : width;
