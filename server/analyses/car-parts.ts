/**
 * What each element between the axles adds at static trim: its deflection, stiffness k ∇s∇sᵀ + F ∇²s and damping
 * c ∇s∇sᵀ (at low speed) over the four wheels, and what it carries for each of them.
 *
 * Nothing of theirs is set to carry the weight: gaps, preloads and charges hold at design position as they are written,
 * and the wheels stand where each axle's ride height puts them.
 */
import type { CarDeflection, Wheels } from "../elements/car-connection.js";
import { eachWheel } from "../elements/car-connection.js";
import type { CarElement } from "../elements/mechanism.js";
import { absent, isAbsent, noDeflectionReason } from "./absent.js";
import type { CarPositions } from "./car-positions.js";
import { dampingMissing, staticForce, staticRate, stiffnessMissing } from "./carrying.js";
import type { Absent } from "./results.js";
import { matrixOf, NO_MATRIX, plusMatrix, type WheelMatrix } from "./wheel-matrix.js";

export interface CarParts {
  /** At rest, or why there is none. */
  readonly rest: ReadonlyMap<CarElement, CarDeflection | Absent>;
  /** By element, with the parts that stand beside it; none where its law is not known. */
  readonly stiffness: ReadonlyMap<CarElement, WheelMatrix>;
  readonly damping: ReadonlyMap<CarElement, WheelMatrix>;
  /** Sums, or why there is none. */
  readonly stiffnessSum: WheelMatrix | string;
  readonly dampingSum: WheelMatrix | string;
  /** What they carry for each wheel, N, ∂U/∂z. */
  readonly loads: Wheels | string;
}

/** The deflection of an element at four travels. */
export function deflectionOf(element: CarElement, positions: CarPositions, travels: Wheels): CarDeflection | Absent {
  const { connection } = element;
  if (connection === undefined) return absent(element.connectionMissing ?? "it is not connected");
  const motion = positions.at(travels);
  if (isAbsent(motion)) return motion;
  const d = connection.deflection(motion);
  return "kind" in d ? absent(noDeflectionReason(d, element.path)) : d;
}

/** The element that figures are told of, for a part that stands beside it. */
export const ownerOf = (part: CarElement, elements: readonly CarElement[]): CarElement =>
  part.part === undefined ? part : (elements.find((one) => one.path === part.path && one.part === undefined) ?? part);

function sumOf(matrices: ReadonlyMap<CarElement, WheelMatrix>): WheelMatrix {
  return [...matrices.values()].reduce(plusMatrix, NO_MATRIX);
}

/** Why some element's deflection at rest is not known although it is joined. */
function unreached(rest: CarParts["rest"]): string | undefined {
  for (const [{ path, connection }, d] of rest) {
    if (connection !== undefined && isAbsent(d)) return `${path} takes part and ${d.reason}`;
  }
  return undefined;
}

export function carParts(elements: readonly CarElement[], positions: CarPositions): CarParts {
  const rest = new Map(elements.map((element) => [element, deflectionOf(element, positions, positions.rest)]));
  const stiffness = new Map<CarElement, WheelMatrix>();
  const damping = new Map<CarElement, WheelMatrix>();
  let loads: Wheels = [0, 0, 0, 0];
  for (const [element, d] of rest) {
    const { law } = element;
    if (isAbsent(d) || law === undefined) continue;
    const owner = ownerOf(element, elements);
    const add = (to: Map<CarElement, WheelMatrix>, more: WheelMatrix) =>
      to.set(owner, plusMatrix(to.get(owner) ?? NO_MATRIX, more));
    if (law.kind === "damper") add(damping, matrixOf(d, law.lowSpeed, 0));
    const force = staticForce(element, d.s);
    if (law.kind === "spring" || force !== 0) add(stiffness, matrixOf(d, staticRate(element, d.s), force));
    loads = eachWheel((wheel) => (loads[wheel] ?? 0) + force * (d.d[wheel] ?? 0));
  }
  const missing = stiffnessMissing(elements) ?? unreached(rest);
  return {
    rest,
    stiffness,
    damping,
    stiffnessSum: missing ?? sumOf(stiffness),
    dampingSum: dampingMissing(elements) ?? unreached(rest) ?? sumOf(damping),
    loads: missing ?? loads,
  };
}
