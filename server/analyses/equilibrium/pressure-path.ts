/**
 * Follows the equilibria of a car over the pressure of the air round their turning points: where the stable branch ends
 * in a fold, the unstable one comes back from it.
 *
 * Pseudo-arclength: F(x, p) = 0 and τ · (y − y₀) = Δ for y = (x, p) in units of which each counts alike, τ the tangent.
 * Source: H. B. Keller, in P. H. Rabinowitz (ed.), Applications of Bifurcation Theory (1977) (from memory).
 */
import type { LoadCase } from "../../elements/loaded-car.js";
import { dampedNewton } from "../../maths/damped-newton.js";
import { solved as linearSolved } from "../../maths/eigen.js";
import { type Balance, balanceOf, stiffnessSign } from "./balance.js";
import { type Load, loadOf } from "./load.js";
import type { Solved } from "./outcome.js";
import { type Position, positionAt } from "./position.js";
import type { Ready } from "./solve.js";

export interface PathPoint {
  readonly pressure: number;
  readonly isStable: boolean;
  readonly solved: Solved;
}

/** Unit of a length on the way, m; of an angle, rad. */
const LENGTH = 1e-3;
const ANGLE = 1e-3;
/** Units a step, and how small it may become. */
const STEP = 1;
const LEAST_STEP = 1 / 64;
const MOST_POINTS = 400;
/** Steps up to the largest pressure, were nothing to move. */
const PRESSURES = 60;
const ACCEPTED = 1e-6;

interface At {
  readonly x: readonly number[];
  readonly pressure: number;
  readonly balance: Balance;
}

/** From an equilibrium on, until the pressure passes `most` or falls to nought, or no further point is found. */
export function pressurePath(ready: Ready, asked: LoadCase, start: Solved, most: number): readonly PathPoint[] {
  const { standing, leftOver, sign } = ready;
  const base = loadOf(standing, asked);
  const loadAt = (pressure: number): Load => ({ ...base, pressure });
  const units = [...start.x.map((_, i) => (i === 1 || i === 2 ? ANGLE : LENGTH)), most / PRESSURES];
  const balance: BalanceOf = (x, pressure, known) => {
    const position = known ?? positionAt(standing, x);
    if (position.kind !== "position" || !(Math.min(...position.heights) > 0)) return undefined;
    return balanceOf(standing, loadAt(pressure), x, position, leftOver);
  };
  const points: PathPoint[] = [];
  let at: At = { x: start.x, pressure: start.load.pressure, balance: start.balance };
  let tangent: readonly number[] = units.map((_, i) => (i === units.length - 1 ? 1 : 0));
  let step = STEP;
  while (points.length < MOST_POINTS && step >= LEAST_STEP) {
    const along = tangentAt(at, balance, units, tangent);
    if (along === undefined) break;
    const next = stepped(at, balance, units, along, step, standing.arms);
    if (next === undefined) {
      step /= 2;
      continue;
    }
    const { pressure, x } = next;
    if (pressure > most || pressure < 0) break;
    const isStable = stiffnessSign(next.balance) === sign;
    const solved: Solved = {
      kind: "solved",
      x,
      balance: next.balance,
      load: loadAt(pressure),
      iterations: 0,
      residual: next.residual,
    };
    points.push({ pressure, isStable, solved });
    [at, tangent, step] = [next, along, Math.min(STEP, step * 1.5)];
  }
  return points;
}

/** @param known the position of x, where that is at hand */
type BalanceOf = (x: readonly number[], pressure: number, known?: Position) => Balance | undefined;

/** ∂F/∂p: the air's forces are proportional to its pressure. */
function byPressure(at: At, balance: BalanceOf, unit: number): readonly number[] | undefined {
  const other = balance(at.x, at.pressure + unit, at.balance.position);
  return other && other.residual.map((value, i) => (value - at.balance.residual[i]!) / unit);
}

/** The unit tangent, on in the sense of the one before. */
function tangentAt(at: At, balance: BalanceOf, units: readonly number[], before: readonly number[]) {
  const column = byPressure(at, balance, units.at(-1)! / 100);
  if (column === undefined) return undefined;
  const rows = at.balance.jacobian.map((row, i) => [
    ...row.map((value, j) => value * units[j]!),
    column[i]! * units.at(-1)!,
  ]);
  const found = linearSolved([...rows, [...before]], [...rows.map(() => [0]), [1]]);
  if (found === undefined) return undefined;
  const vector = found.map(([value]) => value ?? 0);
  const length = Math.sqrt(vector.reduce((sum, value) => sum + value * value, 0));
  return vector.map((value) => value / length);
}

function stepped(
  at: At,
  balance: BalanceOf,
  units: readonly number[],
  tangent: readonly number[],
  step: number,
  arms: readonly [number, number],
): (At & { readonly residual: number }) | undefined {
  const from = [...at.x, at.pressure];
  const size = at.x.length;
  const result = dampedNewton({
    evaluate(y) {
      const [x, pressure] = [y.slice(0, size), y[size]!];
      const found = balance(x, pressure);
      const column = found && byPressure({ x, pressure, balance: found }, balance, units[size]! / 100);
      if (found === undefined || column === undefined) return undefined;
      const gone = tangent.reduce((sum, t, i) => sum + (t * (y[i]! - from[i]!)) / units[i]!, 0);
      return {
        residual: [...found.residual, gone - step],
        jacobian: [...found.jacobian.map((row, i) => [...row, column[i]!]), tangent.map((t, i) => t / units[i]!)],
      };
    },
    start: from.map((value, i) => value + step * tangent[i]! * units[i]!),
    scale: [...at.x.map((_, i) => (i === 1 ? arms[0] : i === 2 ? arms[1] : 1)), 1e-3],
    tolerance: ACCEPTED / 10,
    iterations: 20,
  });
  if (result.residual > ACCEPTED) return undefined;
  const [x, pressure] = [result.x.slice(0, size), result.x[size]!];
  const found = balance(x, pressure);
  return found && { x, pressure, balance: found, residual: result.residual };
}
