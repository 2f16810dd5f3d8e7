/**
 * Roots of F(x) = 0 in several unknowns, where the functions may have kinks (stops, gaps, lifted wheels).
 *
 * In: residuals with their Jacobian, a start, the size of residual that counts alike. Out: the root, or why there is
 * none to be had and which residual is left over.
 *
 * Each step is Newton's where that lessens ½|F/scale|², else one of Levenberg and Marquardt's, held closer until it does.
 *
 * Invariant: the sum of squares falls with every step that is taken, so that it cannot diverge; no throw, no loop without an end.
 *
 * Source: J. Nocedal, S. J. Wright, Numerical Optimization (2006), ch. 10 and 11.
 */
import { Matrix, QrDecomposition } from "ml-matrix";
import { linearRoot } from "./elimination.js";
import { finiteRows, inner, type Rows } from "./rows.js";

export interface Evaluation {
  readonly residual: readonly number[];
  /** ∂residual/∂x, one row a residual; at a kink that of either side. */
  readonly jacobian: Rows;
}

export interface NewtonProblem {
  /** Undefined where there is no value: the step is then shortened. */
  evaluate(x: readonly number[]): Evaluation | undefined;
  readonly start: readonly number[];
  /** Size of each residual that counts as 1 (say 1 N and 1 N·m over half the track). */
  readonly scale: readonly number[];
  /** Solved where every |residual / scale| is at most this. */
  readonly tolerance: number;
  readonly iterations?: number;
  /** Without the fallback it stops where Newton's own step does not help: for trying a way that can be made shorter. */
  readonly plain?: boolean;
}

export interface Solved {
  readonly kind: "solved";
  readonly x: readonly number[];
  readonly iterations: number;
  /** Largest |residual / scale|. */
  readonly residual: number;
}

export interface NotConverged {
  readonly kind: "not-converged";
  /**
   * `stationary`: no direction lessens the residuals any more, there is no root near here;
   * `iterations`: still falling when they ran out; `no-value`: nothing could be evaluated at the start.
   */
  readonly reason: "stationary" | "iterations" | "no-value";
  readonly iterations: number;
  readonly residual: number;
  /** Index of the residual that is furthest from zero. */
  readonly where: number;
  /** The best point found. */
  readonly x: readonly number[];
}

interface Point {
  readonly x: readonly number[];
  /** As evaluated. */
  readonly found: Evaluation;
  /** Over the scale. */
  readonly residual: readonly number[];
  /** ½ |residual|². */
  readonly merit: number;
}

/** A point with its Jacobian over the scale, which only the fallback asks for. */
interface Scaled extends Point {
  readonly jacobian: Rows;
}

/** Share of the predicted decrease that a step has to bring. */
const SUFFICIENT = 1e-4;
/** Jᵀr this small against |J||r| is a stationary point. */
const STATIONARY = 1e-12;
/** Damping beyond which a step is too small to change x. */
const MOST_DAMPING = 1e8;

/** @returns the root, or the best point with the reason why it is none */
export function dampedNewton(problem: NewtonProblem): Solved | NotConverged {
  const most = problem.iterations ?? 100;
  let at = pointAt(problem, problem.start);
  if (at === undefined) return noValue(problem.start);
  let damping = 0;
  for (let iteration = 0; ; iteration++) {
    const { size, where } = largest(at.residual);
    if (size <= problem.tolerance) return { kind: "solved", x: at.x, iterations: iteration, residual: size };
    const stopped = (reason: NotConverged["reason"]): NotConverged =>
      ({ kind: "not-converged", reason, iterations: iteration, residual: size, where, x: at!.x }) as const;
    if (iteration === most) return stopped("iterations");
    const next = step(problem, at, damping);
    if (next === undefined) return stopped("stationary");
    at = next.point;
    damping = next.damping;
  }
}

const noValue = (x: readonly number[]): NotConverged => ({
  kind: "not-converged",
  reason: "no-value",
  iterations: 0,
  residual: Number.MAX_VALUE,
  where: 0,
  x,
});

function pointAt(problem: NewtonProblem, x: readonly number[]): Point | undefined {
  const found = problem.evaluate(x);
  if (found === undefined) return undefined;
  const residual = found.residual.map((value, i) => value / problem.scale[i]!);
  const merit = inner(residual, residual) / 2;
  return Number.isFinite(merit) && finiteRows(found.jacobian) ? { x, found, residual, merit } : undefined;
}

const scaled = (at: Point, scale: readonly number[]): Scaled => ({
  ...at,
  jacobian: at.found.jacobian.map((row, i) => row.map((value) => value / scale[i]!)),
});

function largest(residual: readonly number[]): { readonly size: number; readonly where: number } {
  let where = 0;
  for (let i = 1; i < residual.length; i++) if (Math.abs(residual[i]!) > Math.abs(residual[where]!)) where = i;
  return { size: Math.abs(residual[where] ?? 0), where };
}

/** Lengths of the Jacobian's columns: what a unit of each unknown does, so that metres and radians weigh alike. */
const columnSizes = ({ jacobian, x }: Scaled): number[] =>
  x.map((_, j) => Math.sqrt(jacobian.reduce((total, row) => total + row[j]! * row[j]!, 0)) || 1);

function isStationary(at: Scaled): boolean {
  const sizes = columnSizes(at);
  const length = Math.sqrt(2 * at.merit);
  return at.x.every((_, j) => {
    const slope = at.jacobian.reduce((total, row, i) => total + row[j]! * at.residual[i]!, 0);
    return Math.abs(slope) <= STATIONARY * sizes[j]! * length;
  });
}

/** The next point with a lower sum of squares, and how much damping it took; undefined where there is none. */
function step(problem: NewtonProblem, at: Point, damping: number) {
  if (damping < 1e-8) {
    const full = lower(problem, at, newtonStep(at), at.merit);
    if (full !== undefined) return { point: full, damping: 0 };
    if (problem.plain === true) return undefined;
  }
  const from = scaled(at, problem.scale);
  if (isStationary(from)) return undefined;
  const sizes = columnSizes(from);
  for (let held = Math.max(damping, 1e-3); held < MOST_DAMPING; held *= 8) {
    const point = accepted(problem, from, dampedStep(from, sizes, held));
    if (point !== undefined) return { point, damping: held / 10 };
  }
  return undefined;
}

/** J p = −r, undefined where J is singular, or where there are more or fewer residuals than unknowns. */
function newtonStep({ found: { jacobian, residual }, x }: Point): number[] | undefined {
  if (jacobian.length !== x.length) return undefined;
  return linearRoot(
    jacobian,
    residual.map((value) => -value),
  );
}

/** min |J p + r|² + μ |D p|², by orthogonal factors of [J; √μ D], which keeps the condition of J. */
function dampedStep({ jacobian, residual }: Scaled, sizes: readonly number[], damping: number): number[] {
  const root = Math.sqrt(damping);
  const held = sizes.map((size, i) => sizes.map((_, j) => (i === j ? root * size : 0)));
  const left = new Matrix([...jacobian.map((row) => [...row]), ...held]);
  const right = Matrix.columnVector([...residual.map((value) => -value), ...sizes.map(() => 0)]);
  return new QrDecomposition(left).solve(right).to1DArray();
}

/** The point a damped step away, if it lessens the sum of squares enough. */
function accepted(problem: NewtonProblem, at: Scaled, by: readonly number[]): Point | undefined {
  const left = at.residual.map((r, i) => r + at.jacobian[i]!.reduce((total, value, j) => total + value * by[j]!, 0));
  return lower(problem, at, by, at.merit - left.reduce((total, value) => total + value * value, 0) / 2);
}

/** @param predicted how much lower the sum of squares would be if the functions were straight: all of it for Newton's own step */
function lower(
  problem: NewtonProblem,
  at: Point,
  by: readonly number[] | undefined,
  predicted: number,
): Point | undefined {
  if (by === undefined || !by.every(Number.isFinite)) return undefined;
  const x = at.x.map((value, j) => value + by[j]!);
  if (x.every((value, j) => value === at.x[j])) return undefined;
  const point = pointAt(problem, x);
  if (point === undefined) return undefined;
  return at.merit - point.merit > SUFFICIENT * predicted && point.merit < at.merit ? point : undefined;
}
