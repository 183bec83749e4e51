import { square } from '../quantity/maths.js';

/**
 * Jointly normal unknowns, sums of which are measured. Measurements are taken in one by one; the covariance only shrinks.
 */
export class JointNormal {
  private readonly names: string[] = [];
  /** Means, and how each mean changes with the estimate: that is the weight the estimate keeps. */
  private readonly means: number[] = [];
  private readonly weights: number[] = [];
  private readonly covariance: number[][] = [];

  add(name: string, mean: number, variance: number, weight = 0): void {
    if (this.names.includes(name)) return;
    this.names.push(name);
    this.means.push(mean);
    this.weights.push(weight);
    for (const row of this.covariance) row.push(0);
    this.covariance.push([...this.means.map(() => 0).slice(1), variance]);
  }

  /** Mean, weight and variance of a sum of unknowns. */
  sum(names: readonly string[]): { mean: number; weight: number; variance: number } {
    const at = names.map((name) => this.names.indexOf(name));
    const total = (values: readonly number[]): number => at.reduce((sum, i) => sum + values[i]!, 0);
    return {
      mean: total(this.means),
      weight: total(this.weights),
      variance: at.reduce((sum, i) => sum + total(this.covariance[i]!), 0),
    };
  }

  /** Takes in a measurement of a sum of unknowns; how far it was off, squared, in units of its variance. */
  measure(names: readonly string[], value: number, variance: number): number {
    const before = this.sum(names);
    const at = names.map((name) => this.names.indexOf(name));
    const shared = this.covariance.map((row) => at.reduce((sum, i) => sum + row[i]!, 0));
    const all = before.variance + variance;
    shared.forEach((own, i) => {
      this.means[i]! += (own / all) * (value - before.mean);
      this.weights[i]! -= (own / all) * before.weight;
      shared.forEach((other, j) => (this.covariance[i]![j]! -= (own * other) / all));
    });
    return square(value - before.mean) / all;
  }
}
