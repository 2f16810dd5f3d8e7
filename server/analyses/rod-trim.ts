/**
 * Trim by the push or pull rods: how much longer both have to be so that the axle carries its weight at its ride height,
 * every seat where it is. The rockers turn by it, so the geometry is solved again at every step.
 *
 * In: an axle that can be built anew with other rods. Out: the axle with them, and their change of length.
 * At rest Σ F ∂s/∂z equals the load of each wheel (`carriedLoads`), solved to 1e-9 of that load.
 *
 * Invariant: the rods of a mirrored axle that is loaded alike on both sides stay alike.
 */
import type { AxleMechanism, Sides } from "../elements/mechanism.js";
import { dampedNewton, type Evaluation } from "../maths/damped-newton.js";
import { absent, isAbsent } from "./absent.js";
import { staticForce, stiffnessMissing } from "./carrying.js";
import { carriedLoads } from "./loads.js";
import type { Absent, RodsSet } from "./results.js";
import { axlePositions, isBound } from "./states.js";

export interface RodTrim {
  readonly mechanism: AxleMechanism;
  readonly set: RodsSet;
}

/** Change of length over which derivatives are differenced, m, and the residual that counts as none, of the load. */
const STEP = 1e-6;
const TOLERANCE = 1e-9;

/** The axle as it stands: with its rods set where they are what trims it. */
export function asTrimmed(mechanism: AxleMechanism): AxleMechanism | Absent {
  if (mechanism.trim.by !== "push-rod") return mechanism;
  const trimmed = trimmedByRods(mechanism);
  return isAbsent(trimmed) ? trimmed : trimmed.mechanism;
}

/** The axle with its rods set, or why they cannot be. */
export function trimmedByRods(mechanism: AxleMechanism): RodTrim | Absent {
  const { rods, elements, joined } = mechanism;
  if (rods === undefined) return absent(`the ${mechanism.name} axle has no rod whose length could be set`);
  const missing = stiffnessMissing(elements) ?? (typeof joined === "string" ? joined : undefined);
  if (missing !== undefined) return absent(missing);
  const drawn = leftOver(mechanism);
  if (isAbsent(drawn)) return drawn;
  const longer: Longer = (left, right) => {
    const made = rods.longer(left, right);
    return made && { ...made, joined };
  };
  const found = lengths(longer, drawn);
  if (found === undefined)
    return absent(`no length of the ${mechanism.name} ${rods.kind}s carries the weight at ride height`);
  const set = longer(found.left, found.right);
  return set === undefined
    ? absent(`the ${mechanism.name} rockers cannot be reached by the ${rods.kind}s`)
    : { mechanism: set, set: { kind: rods.kind, ...found } };
}

interface LeftOver extends Sides<number> {
  /** Load of the wheels, N, together. */
  readonly load: number;
}

/** What the elements leave of each wheel's load, N. */
function leftOver(mechanism: AxleMechanism): LeftOver | Absent {
  const { staticTravel, elements } = mechanism;
  const rest = axlePositions(mechanism).at(staticTravel, staticTravel).motion;
  if (isBound(rest)) return absent("the linkage does not reach ride height with such rods");
  const loads = carriedLoads(mechanism, rest);
  if (isAbsent(loads)) return loads;
  const joined = typeof mechanism.joined === "object" ? mechanism.joined : { left: 0, right: 0 };
  let left = loads.left - joined.left;
  let right = loads.right - joined.right;
  for (const element of elements) {
    const d = element.connection?.deflection(rest);
    if (d === undefined || "kind" in d) continue;
    const force = staticForce(element, d.s);
    left -= force * d.dL;
    right -= force * d.dR;
  }
  return { left, right, load: Math.abs(loads.left) + Math.abs(loads.right) };
}

type Longer = NonNullable<AxleMechanism["rods"]>["longer"];

function lengths(longer: Longer, drawn: LeftOver): Sides<number> | undefined {
  const isAlike = Math.abs(drawn.left - drawn.right) <= TOLERANCE * drawn.load;
  const unpacked = ([left = 0, right = left]: readonly number[]): Sides<number> => ({ left, right });
  const residualAt = (x: readonly number[]): readonly number[] | undefined => {
    const { left, right } = unpacked(x);
    const mechanism = longer(left, right);
    const over = mechanism && leftOver(mechanism);
    if (over === undefined || isAbsent(over)) return undefined;
    return isAlike ? [over.left + over.right] : [over.left, over.right];
  };
  const start = isAlike ? [0] : [0, 0];
  const solved = dampedNewton({
    evaluate: (x) => evaluation(residualAt, x),
    start,
    scale: start.map(() => drawn.load),
    tolerance: TOLERANCE,
    iterations: 40,
  });
  return solved.kind === "solved" ? unpacked(solved.x) : undefined;
}

function evaluation(
  residualAt: (x: readonly number[]) => readonly number[] | undefined,
  x: readonly number[],
): Evaluation | undefined {
  const residual = residualAt(x);
  if (residual === undefined) return undefined;
  const columns = x.map((_, k) => residualAt(x.map((value, i) => (i === k ? value + STEP : value))));
  if (columns.includes(undefined)) return undefined;
  return { residual, jacobian: residual.map((value, i) => columns.map((column) => (column![i]! - value) / STEP)) };
}
