/**
 * Complex answers of whatever moves in a linear car to road heights that swing with e^(jωt), and its transfer functions.
 *
 * A displacement is c·q + d·r; an output is an operator m₀ + m₁ s + m₂ s² (s = jω) on one: 1 for a travel or a height, s for
 * a speed, s² for an acceleration, k + c s for a tyre's force.
 *
 * Two ways to the same numbers. By modes: with A = WΛW⁻¹ each pair of roots σ ± iω₀ answers u with
 * [[s − σ, ω₀], [−ω₀, s − σ]] u/(s² − 2σs + |λ|²), a few multiplications. Where the basis is too skew for that (roots about to
 * fall together) each frequency is solved by elimination (`swinging.ts`).
 */
import { invertedBasis } from "../../maths/eigen.js";
import { product, type Rows } from "../../maths/rows.js";
import type { LinearSystem } from "./linear-system.js";
import type { Part } from "./parts.js";
import { flat, swingingOf } from "./swinging.js";

export interface Displacement {
  readonly motion: readonly number[];
  readonly road: readonly number[];
}

export type Operator = readonly [number, number, number];

export interface Responder {
  readonly way: "modes" | "direct";
  /**
   * @param road complex amplitude of each height, re and im by turns
   * @param into takes that of each displacement, likewise
   * @returns false, and nothing written, at a frequency that nothing resists
   */
  at(omega: number, road: Float64Array, into: Float64Array): boolean;
}

/** Condition of the basis beyond which rounding would show in the ninth digit. */
const TOO_SKEW = 1e6;

export const responderOf = (part: Part, displacements: readonly Displacement[], way?: Responder["way"]): Responder =>
  (way === "direct" ? undefined : byModes(part, displacements)) ?? direct(part.system, displacements);

/**
 * H(jω) of each displacement (row) to each road height (column) as [re, im]; undefined at a frequency that nothing resists.
 *
 * @param omega rad/s
 */
export function transferAt(
  responder: Responder,
  shape: { readonly displacements: number; readonly inputs: number },
  omega: number,
): readonly (readonly (readonly [number, number])[])[] | undefined {
  const into = new Float64Array(2 * shape.displacements);
  const columns: (readonly (readonly [number, number])[])[] = [];
  for (let input = 0; input < shape.inputs; input++) {
    const road = new Float64Array(2 * shape.inputs);
    road[2 * input] = 1;
    if (!responder.at(omega, road, into)) return undefined;
    columns.push(Array.from({ length: shape.displacements }, (_, d) => [into[2 * d]!, into[2 * d + 1]!] as const));
  }
  return Array.from({ length: shape.displacements }, (_, d) => columns.map((column) => column[d]!));
}

/** (m₀ + m₁ jω − m₂ ω²) h. */
export function operated([m0, m1, m2]: Operator, omega: number, [re, im]: readonly [number, number]): [number, number] {
  const [a, b] = [m0 - m2 * omega * omega, m1 * omega];
  return [a * re - b * im, a * im + b * re];
}

function byModes({ space, spectrum }: Part, displacements: readonly Displacement[]): Responder | undefined {
  const inverted = invertedBasis(spectrum.basis);
  if (inverted === undefined || inverted.condition > TOO_SKEW) return undefined;
  const unscaled = spectrum.basis.slice(0, space.freedoms).map((row, i) => row.map((value) => value / space.scale[i]!));
  const shown = product(
    displacements.map(({ motion }) => motion),
    unscaled,
  );
  return {
    way: "modes",
    at: evaluator({
      re: spectrum.re,
      im: spectrum.im,
      entering: columnsOf(product(inverted.inverse, space.b)),
      shown: flat(shown),
      through: flat(displacements.map(({ road }) => road)),
      displacements: displacements.length,
    }),
  };
}

interface Modal {
  readonly re: readonly number[];
  readonly im: readonly number[];
  /** W⁻¹B by input; C W, displacements × states; d, displacements × inputs. */
  readonly entering: readonly Float64Array[];
  readonly shown: Float64Array;
  readonly through: Float64Array;
  readonly displacements: number;
}

const columnsOf = (rows: Rows): readonly Float64Array[] =>
  (rows[0] ?? []).map((_, c) => Float64Array.of(...rows.map((row) => row[c]!)));

function evaluator({ re, im, entering, shown, through, displacements }: Modal): Responder["at"] {
  const states = re.length;
  const x = new Float64Array(2 * states);
  const answered = answers(Float64Array.of(...re), Float64Array.of(...im), x);
  return (omega, road, into) => {
    entered(entering, road, x);
    if (!answered(omega)) return false;
    multiplied(shown, x, states, into, displacements);
    addThrough(through, road, into, displacements);
    return true;
  };
}

/** x = Σ column · height; most heights are none where one after the other is asked about. */
function entered(columns: readonly Float64Array[], road: Float64Array, x: Float64Array): void {
  x.fill(0);
  for (let c = 0; c < columns.length; c++) {
    const re = road[2 * c]!;
    const im = road[2 * c + 1]!;
    if (re === 0 && im === 0) continue;
    const column = columns[c]!;
    for (let i = 0; i < column.length; i++) {
      x[2 * i]! += column[i]! * re;
      x[2 * i + 1]! += column[i]! * im;
    }
  }
}

/** y = A x for a real A, row by row, and a complex x. */
function multiplied(a: Float64Array, x: Float64Array, width: number, y: Float64Array, height: number): void {
  for (let i = 0, at = 0; i < height; i++) {
    let re = 0;
    let im = 0;
    for (let j = 0; j < 2 * width; j += 2, at++) {
      const value = a[at]!;
      re += value * x[j]!;
      im += value * x[j + 1]!;
    }
    y[2 * i] = re;
    y[2 * i + 1] = im;
  }
}

/** What of each height is a displacement at once. */
function addThrough(through: Float64Array, road: Float64Array, into: Float64Array, displacements: number): void {
  const inputs = through.length / displacements;
  for (let d = 0, at = 0; d < displacements; d++) {
    for (let c = 0; c < inputs; c++, at++) {
      const share = through[at]!;
      into[2 * d]! += share * road[2 * c]!;
      into[2 * d + 1]! += share * road[2 * c + 1]!;
    }
  }
}

/** x ← (jω − Λ)⁻¹ x in place, root by root and pair by pair; false where jω is a root. */
function answers(re: Float64Array, im: Float64Array, x: Float64Array) {
  return (omega: number): boolean => {
    for (let k = 0; k < re.length; k++) {
      const sigma = re[k]!;
      const turn = im[k]!;
      // 1/(s − σ), or 1/(s² − 2σs + |λ|²).
      const a = turn === 0 ? -sigma : sigma * sigma + turn * turn - omega * omega;
      const b = turn === 0 ? omega : -2 * sigma * omega;
      const square = a * a + b * b;
      if (!(square > 0)) return false;
      const gRe = a / square;
      const gIm = -b / square;
      const at = 2 * k;
      const uRe = x[at]!;
      const uIm = x[at + 1]!;
      if (turn === 0) {
        x[at] = gRe * uRe - gIm * uIm;
        x[at + 1] = gRe * uIm + gIm * uRe;
        continue;
      }
      const vRe = x[at + 2]!;
      const vIm = x[at + 3]!;
      const pRe = turn * vRe - sigma * uRe - omega * uIm;
      const pIm = turn * vIm - sigma * uIm + omega * uRe;
      const qRe = -turn * uRe - sigma * vRe - omega * vIm;
      const qIm = -turn * uIm - sigma * vIm + omega * vRe;
      x[at] = gRe * pRe - gIm * pIm;
      x[at + 1] = gRe * pIm + gIm * pRe;
      x[at + 2] = gRe * qRe - gIm * qIm;
      x[at + 3] = gRe * qIm + gIm * qRe;
      k++;
    }
    return true;
  };
}

function direct(system: LinearSystem, displacements: readonly Displacement[]): Responder {
  const swinging = swingingOf(system);
  const q = new Float64Array(2 * swinging.freedoms);
  const motion = flat(displacements.map((one) => one.motion));
  const through = flat(displacements.map((one) => one.road));
  const at: Responder["at"] = (omega, road, into) => {
    if (!swinging.at(omega, road, q, 1)) return false;
    multiplied(motion, q, swinging.freedoms, into, displacements.length);
    addThrough(through, road, into, displacements.length);
    return true;
  };
  return { way: "direct", at };
}
