/**
 * Integrals of several functions at once over one interval, to a wanted relative accuracy.
 *
 * Seven-point Gauss inside fifteen-point Kronrod; the worst intervals are halved until every integral is near enough.
 * The nodes that were used last are handed out: slightly changed functions may be summed over the same ones.
 *
 * Invariant: it ends; what is not near enough says so.
 *
 * Source: R. Piessens et al., QUADPACK (1983): nodes, weights and the estimate of the error.
 */
export type Integrand = (x: number, out: Float64Array) => void;

export interface Integral {
  readonly values: Float64Array;
  /** Largest estimated error over the integral of |f|. */
  readonly error: number;
  readonly converged: boolean;
  readonly evaluations: number;
  /** Σ weightᵢ f(nodeᵢ) is `values`. */
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

export interface Accuracy {
  /** Error allowed over the integral of |f|, for each function. */
  readonly relative: number;
  readonly panels?: number;
}

const NODES = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848, 0,
];
const KRONROD = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889, 0.20948214108472782,
];
/** Of the odd nodes. */
const GAUSS = [0.1294849661688697, 0.27970539148927664, 0.3818300505051189, 0.4179591836734694];

interface Panel {
  readonly from: number;
  readonly to: number;
  readonly values: Float64Array;
  readonly sizes: Float64Array;
  readonly errors: Float64Array;
}

function panelOf(f: Integrand, size: number, from: number, to: number, at: Float64Array): Panel {
  const [values, sizes, gauss] = [new Float64Array(size), new Float64Array(size), new Float64Array(size)];
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  for (let k = 0; k < 15; k++) {
    const node = k < 8 ? k : 14 - k;
    f(middle + (k < 8 ? -half : half) * NODES[node]!, at);
    const weight = half * KRONROD[node]!;
    const inGauss = node % 2 === 1 ? half * GAUSS[node >> 1]! : 0;
    for (let i = 0; i < size; i++) {
      const value = at[i]!;
      values[i]! += weight * value;
      sizes[i]! += weight * Math.abs(value);
      gauss[i]! += inGauss * value;
    }
  }
  const errors = values.map((value, i) => sharpened(Math.abs(value - gauss[i]!), sizes[i]!));
  return { from, to, values, sizes, errors };
}

/** QUADPACK's view that the Kronrod sum is better than its distance from Gauss'. */
function sharpened(distance: number, size: number): number {
  return size > 0 ? size * Math.min(1, (200 * (distance / size)) ** 1.5) : distance;
}

/** Intervals are halved together with the worst one where their error is this share of its. */
const AMONG_THE_WORST = 0.3;

/** Its largest error, each over the whole integral of |f|. */
function worst(errors: Float64Array, sizes: Float64Array): number {
  let most = 0;
  for (let i = 0; i < errors.length; i++) if (errors[i]! > most * sizes[i]!) most = errors[i]! / sizes[i]!;
  return most;
}

function added(panels: readonly Panel[], size: number): Omit<Panel, "from" | "to"> {
  const [values, sizes, errors] = [new Float64Array(size), new Float64Array(size), new Float64Array(size)];
  for (const panel of panels) {
    for (let i = 0; i < size; i++) {
      values[i]! += panel.values[i]!;
      sizes[i]! += panel.sizes[i]!;
      errors[i]! += panel.errors[i]!;
    }
  }
  return { values, sizes, errors };
}

/**
 * ∫ f dx from `edges[0]` to the last edge, cut at the edges in between (where f has kinks).
 *
 * @param size how many functions f writes
 * @param edges increasing, at least two
 */
export function integrate(f: Integrand, size: number, edges: readonly number[], accuracy: Accuracy): Integral {
  const at = new Float64Array(size);
  let panels = edges.slice(1).map((to, i) => panelOf(f, size, edges[i]!, to, at));
  const most = Math.max(accuracy.panels ?? 200, panels.length);
  let evaluations = 15 * panels.length;
  for (;;) {
    const total = added(panels, size);
    const error = worst(total.errors, total.sizes);
    const converged = error <= accuracy.relative;
    if (converged || !Number.isFinite(error))
      return { values: total.values, error, converged, evaluations, ...rule(panels) };
    const errors = panels.map((panel) => worst(panel.errors, total.sizes));
    const largest = Math.max(...errors);
    const needy = panels.filter((_, i) => errors[i]! > AMONG_THE_WORST * largest);
    if (panels.length + needy.length > most)
      return { values: total.values, error, converged, evaluations, ...rule(panels) };
    panels = panels.flatMap((panel) => {
      if (!needy.includes(panel)) return [panel];
      const middle = (panel.from + panel.to) / 2;
      return [panelOf(f, size, panel.from, middle, at), panelOf(f, size, middle, panel.to, at)];
    });
    evaluations += 30 * needy.length;
  }
}

function rule(panels: readonly Panel[]): { readonly nodes: Float64Array; readonly weights: Float64Array } {
  const nodes = new Float64Array(15 * panels.length);
  const weights = new Float64Array(15 * panels.length);
  for (const [p, { from, to }] of panels.entries()) {
    const [middle, half] = [(from + to) / 2, (to - from) / 2];
    for (let k = 0; k < 15; k++) {
      const node = k < 8 ? k : 14 - k;
      nodes[15 * p + k] = middle + (k < 8 ? -half : half) * NODES[node]!;
      weights[15 * p + k] = half * KRONROD[node]!;
    }
  }
  return { nodes, weights };
}
