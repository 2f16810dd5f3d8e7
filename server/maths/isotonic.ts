/**
 * Isotonic regression: the values that rise (or stay) from one to the next and lie closest to the given ones in the sense
 * of least weighted squares, by pooling adjacent violators.
 *
 * Source: M. Ayer, H. D. Brunk, G. M. Ewing, W. T. Reid, E. Silverman, "An Empirical Distribution Function for Sampling
 * with Incomplete Information", Ann. Math. Statist. 26 (1955) 641.
 */
export function isotonic(values: readonly number[], weights: readonly number[]): readonly number[] {
  const pools: { mean: number; weight: number; count: number }[] = [];
  for (const [i, value] of values.entries()) {
    let pool = { mean: value, weight: weights[i] ?? 1, count: 1 };
    for (let last = pools.at(-1); last !== undefined && last.mean > pool.mean; last = pools.at(-1)) {
      pools.pop();
      const weight = last.weight + pool.weight;
      const mean = (last.mean * last.weight + pool.mean * pool.weight) / weight;
      pool = { mean, weight, count: last.count + pool.count };
    }
    pools.push(pool);
  }
  return pools.flatMap(({ mean, count }) => Array.from({ length: count }, () => mean));
}
