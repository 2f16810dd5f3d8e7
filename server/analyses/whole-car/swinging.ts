/**
 * What the coordinates of a linear car do to road heights that swing with e^(jωt), by elimination at each frequency:
 * (K − ω²M + jωC + NᵀD N/(1 + jωτ)) q = (Kᵣ + jωCᵣ + NᵀD R/(1 + jωτ)) r.
 *
 * For a few hundred frequencies that is less work than eigenvalues, and never ill-conditioned where roots fall together.
 * Complex numbers are re and im by turns, matrices row by row.
 */
import { solvedInPlace } from "../../maths/complex-solve.js";
import { product, type Rows } from "../../maths/rows.js";
import type { LinearSystem } from "./linear-system.js";

export interface Swinging {
  readonly freedoms: number;
  readonly inputs: number;
  /**
   * @param road inputs × columns, a column each question
   * @param q takes freedoms × columns
   * @returns false at a frequency that nothing resists
   */
  at(omega: number, road: Float64Array, q: Float64Array, columns: number): boolean;
}

/** A + jωB + P/(1 + jωτ) − ω²M, row by row. */
interface Form {
  readonly stiffness: Float64Array;
  readonly damping: Float64Array;
  readonly air: Float64Array | undefined;
}

export function swingingOf(system: LinearSystem): Swinging {
  const { air } = system;
  const push = air && product(transposed(air.heights), air.slopes);
  const own: Form = {
    stiffness: flat(system.stiffness),
    damping: flat(system.damping),
    air: push && air && flat(product(push, air.heights)),
  };
  const ground: Form = {
    stiffness: flat(system.roadStiffness),
    damping: flat(system.roadDamping),
    air: push && air && flat(product(push, air.road)),
  };
  const mass = flat(system.mass);
  const freedoms = system.mass.length;
  const inputs = system.roadStiffness[0]?.length ?? 0;
  const matrix = new Float64Array(2 * mass.length);
  const by = new Float64Array(2 * ground.stiffness.length);
  return {
    freedoms,
    inputs,
    at(omega, road, q, columns) {
      const lag = omega * (air?.lag ?? 0);
      filled(matrix, own, omega, lag);
      for (let i = 0; i < mass.length; i++) matrix[2 * i]! -= omega * omega * mass[i]!;
      filled(by, ground, omega, lag);
      multiplied(by, road, q, inputs, columns);
      return solvedInPlace(matrix, q, freedoms, columns);
    },
  };
}

const transposed = (a: Rows): number[][] => (a[0] ?? []).map((_, j) => a.map((row) => row[j]!));

/** Row by row. */
export function flat(rows: Rows): Float64Array {
  const width = rows[0]?.length ?? 0;
  const into = new Float64Array(width * rows.length);
  for (let i = 0; i < rows.length; i++) into.set(rows[i]!, width * i);
  return into;
}

function filled(into: Float64Array, { stiffness, damping, air }: Form, omega: number, lag: number): void {
  for (let i = 0; i < stiffness.length; i++) {
    into[2 * i] = stiffness[i]!;
    into[2 * i + 1] = omega * damping[i]!;
  }
  if (air === undefined) return;
  const re = 1 / (1 + lag * lag);
  const im = -lag * re;
  for (let i = 0; i < air.length; i++) {
    into[2 * i]! += re * air[i]!;
    into[2 * i + 1]! += im * air[i]!;
  }
}

/** y = A x, most of A being nought. @param inner columns of A @param columns of x and y */
function multiplied(a: Float64Array, x: Float64Array, y: Float64Array, inner: number, columns: number): void {
  y.fill(0);
  const rows = a.length / (2 * inner);
  for (let i = 0; i < rows; i++) {
    for (let m = 0; m < inner; m++) {
      const re = a[2 * (i * inner + m)]!;
      const im = a[2 * (i * inner + m) + 1]!;
      if (re === 0 && im === 0) continue;
      for (let c = 0; c < columns; c++) {
        const from = 2 * (m * columns + c);
        const to = 2 * (i * columns + c);
        y[to]! += re * x[from]! - im * x[from + 1]!;
        y[to + 1]! += re * x[from + 1]! + im * x[from]!;
      }
    }
  }
}
