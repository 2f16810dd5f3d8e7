/**
 * The straight line nearest in the mean square to a function of a normally distributed number u = σ x, x ~ N(0, 1):
 * mean E[f(u)] and slope E[f(u) u]/σ².
 *
 * Five Gauss points between the edges, which are cut where f has kinks; beyond six standard deviations there is nothing.
 * Source of the line: Booton's and Caughey's statistical linearisation (from memory).
 */
export interface GaussianLine {
  readonly mean: number;
  readonly slope: number;
}

const EDGES = [-6, -3, -1.5, 0, 1.5, 3, 6];
const NODES = [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664];
const WEIGHTS = [0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891];

/** @param sigma above nought @param kinks of f, in u */
export function gaussianLine(f: (u: number) => number, sigma: number, kinks: readonly number[] = []): GaussianLine {
  const edges = cut(kinks, sigma);
  const middle = f(0);
  let [mean, moment] = [0, 0];
  for (let i = 1; i < edges.length; i++) {
    const half = (edges[i]! - edges[i - 1]!) / 2;
    const centre = edges[i]! - half;
    for (let k = 0; k < NODES.length; k++) {
      const x = centre + half * NODES[k]!;
      const share = (half * WEIGHTS[k]! * Math.exp((-x * x) / 2) * (f(sigma * x) - middle)) / Math.sqrt(2 * Math.PI);
      mean += share;
      moment += share * x;
    }
  }
  return { mean: middle + mean, slope: moment / sigma };
}

function cut(kinks: readonly number[], sigma: number): readonly number[] {
  // An edge that is there twice adds a piece of no width.
  const inside = kinks.map((at) => at / sigma).filter((at) => Math.abs(at) < 6);
  return inside.length === 0 ? EDGES : [...EDGES, ...inside].sort((a, b) => a - b);
}
