// Reference libraries that ship no types; only what the tests call.
declare module 'jstat' {
  const jstat: {
    studentt: { inv(chance: number, degrees: number): number; cdf(t: number, degrees: number): number };
    normal: {
      inv(chance: number, mean: number, deviation: number): number;
      cdf(x: number, mean: number, deviation: number): number;
    };
    lognormal: {
      inv(chance: number, mean: number, deviation: number): number;
      cdf(x: number, mean: number, deviation: number): number;
    };
    chisquare: { inv(chance: number, degrees: number): number; cdf(x: number, degrees: number): number };
    noncentralt: { cdf(t: number, degrees: number, delta: number): number };
    binomial: { cdf(count: number, of: number, chance: number): number };
    centralF: { inv(chance: number, over: number, under: number): number };
    models: { ols(y: number[], x: number[][]): { coef: number[]; R2: number; SSE: number } };
  };
  export default jstat;
}
declare module '@citation-js/core' {
  export class Cite {
    constructor(data: unknown);
    data: Record<string, unknown>[];
    format(name: string, options?: object): string;
  }
  export const plugins: { config: { get(name: string): Record<string, unknown> } };
}
declare module '@citation-js/plugin-bibtex';
declare module '@citation-js/plugin-csl';
