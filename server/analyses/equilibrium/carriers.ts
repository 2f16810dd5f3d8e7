/**
 * What carries force between body and wheels in a load case: every spring, stop, bar, gas and oil of both axles and of
 * the car, seated as the axle is trimmed, and what an actuator holds.
 *
 * Dampers and inerters carry nothing in a steady state but the force of a damper's own gas.
 */
import type { CarConnection } from "../../elements/car-connection.js";
import type { Connection, Deflection, Element, HoldLaw } from "../../elements/element.js";
import type { AxleMechanism, CarElement } from "../../elements/mechanism.js";
import type { AxleMotion, CornerMotion } from "../../linkage/corner.js";
import { absent, isAbsent, noDeflectionReason } from "../absent.js";
import { staticForce, staticRate, stiffnessMissing } from "../carrying.js";
import type { Absent } from "../results.js";
import { trimAxle } from "../trim.js";
import type { LoadedAxle } from "../../elements/loaded-car.js";

export type Carrier = {
  readonly element: Element | CarElement;
  /** What its trim adds to its deflection, m or rad. */
  readonly seat: number;
  /** Undefined for a damper with gas, a spring, a stop, gas or oil; what is held otherwise. */
  readonly hold: HoldLaw | undefined;
} & (
  | { readonly axle: 0 | 1; readonly connection: Connection }
  | { readonly axle: undefined; readonly connection: CarConnection }
);

export const forceOf = ({ element, seat }: Carrier, s: number): number => staticForce(element, s + seat);
export const rateOf = ({ element, seat }: Carrier, s: number): number => staticRate(element, s + seat);

const carries = ({ law }: Pick<Element, "law">): boolean =>
  law?.kind === "spring" || law?.kind === "hold" || (law?.kind === "damper" && (law.gasForce !== 0 || !!law.gasRate));

const holdOf = ({ law }: Pick<Element, "law">): HoldLaw | undefined => (law?.kind === "hold" ? law : undefined);

/** Seats of one axle's elements at its ride height. */
function seatsOf(mechanism: AxleMechanism, motion: AxleMotion): ReadonlyMap<Element, number> | Absent {
  const standing = new Map<Element, Deflection>();
  for (const element of mechanism.elements) {
    const d = element.connection?.deflection(motion);
    if (d === undefined) continue;
    if ("kind" in d) return absent(noDeflectionReason(d, element.path));
    standing.set(element, d);
  }
  const { results, seats } = trimAxle(mechanism, motion, standing);
  return isAbsent(results) ? results : seats;
}

function ofAxle({ mechanism }: LoadedAxle, axle: 0 | 1, motion: AxleMotion): readonly Carrier[] | Absent {
  const seats = seatsOf(mechanism, motion);
  if (isAbsent(seats)) return seats;
  return mechanism.elements.flatMap((element) => {
    const { connection } = element;
    if (connection === undefined || connection.idle !== undefined || !carries(element)) return [];
    return [{ element, seat: seats.get(element) ?? 0, hold: holdOf(element), axle, connection }];
  });
}

/** @param motions of the corners at rest, FL, FR, RL, RR */
export function carriersOf(
  { front, rear }: { readonly front: LoadedAxle; readonly rear: LoadedAxle },
  joining: readonly CarElement[],
  motions: readonly CornerMotion[],
): readonly Carrier[] | Absent {
  const missing = stiffnessMissing(joining);
  if (missing !== undefined) return absent(missing);
  const ahead = ofAxle(front, 0, { left: motions[0]!, right: motions[1]! });
  if (isAbsent(ahead)) return ahead;
  const behind = ofAxle(rear, 1, { left: motions[2]!, right: motions[3]! });
  if (isAbsent(behind)) return behind;
  const joined = joining.flatMap((element): Carrier[] => {
    const { connection } = element;
    if (connection === undefined || connection.idle !== undefined || !carries(element)) return [];
    return [{ element, seat: 0, hold: holdOf(element), axle: undefined, connection }];
  });
  return [...ahead, ...behind, ...joined];
}
