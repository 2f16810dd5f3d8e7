/**
 * What one axle answers to roll, for what takes the whole car: its moment against the angle between body and wheels
 * with both wheels opposed about rest, and the heights that lateral forces act at.
 *
 * M(φ) = dU/dφ = Σ F (∂s/∂z_R − ∂s/∂z_L) · t/2 at z_L = z₀ − φt/2, z_R = z₀ + φt/2; φ positive lifts the left side.
 * Dampers are still. Elements between the axles are not in it.
 */
import type { Element } from "../elements/element.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import { rollCentreHeight } from "../linkage/roll-centre.js";
import { absent, bindsReason, noDeflectionReason } from "./absent.js";
import { staticForce, stiffnessMissing } from "./carrying.js";
import { axleMass } from "./loads.js";
import type { Absent, AxleRoll, Figure } from "./results.js";
import { type AxleStates, deflectionIn, isBound, type State } from "./states.js";
import type { Trim } from "./trim.js";

/** Moment on the axle at a state, N·m; absent where some element has no deflection there. */
function momentAt(elements: readonly Element[], state: State, { seats }: Trim, track: number): Figure {
  const { motion } = state;
  if (isBound(motion)) return absent(bindsReason(motion.why, motion.side));
  let sum = 0;
  for (const element of elements) {
    const d = element.connection && deflectionIn(state, motion, element.connection);
    if (d === undefined) continue;
    if ("kind" in d) return absent(noDeflectionReason(d, element.path));
    sum += staticForce(element, d.s + (seats.get(element) ?? 0)) * (d.dR - d.dL);
  }
  return (sum * track) / 2;
}

type Heights = Pick<AxleRoll, "rollCentre" | "wheelHeight">;

/** Above the ground, from where the contact points are at rest. */
function heightsOf({ name }: AxleMechanism, { rest }: AxleStates): Heights | Absent {
  const { wheel } = rest.left;
  if (wheel === undefined) {
    return absent(`the ${name} axle is given by ratios, so that the height of its roll centre is not known`);
  }
  const centre = rollCentreHeight(wheel.contact);
  if (centre === undefined) return absent(`the ${name} axle has no roll centre`);
  return { rollCentre: centre - wheel.contact.p[2], wheelHeight: wheel.centre.p[2] - wheel.contact.p[2] };
}

/** Tyres alone, N·m/rad: t²/4 (k_L + k_R). */
function tyreRoll({ name, wheels, track = 0 }: AxleMechanism): Figure {
  const { left, right } = wheels;
  if (left.tyreRate === undefined || right.tyreRate === undefined)
    return absent(`the ${name} wheels have no tyre-rate`);
  return ((track * track) / 4) * (left.tyreRate + right.tyreRate);
}

/** @param steps further travels (−q, +q) from rest at which the moment shall be known: those at which a stage is used up */
export function axleRoll(
  mechanism: AxleMechanism,
  states: AxleStates,
  trim: Trim,
  steps: readonly number[],
): AxleRoll | Absent {
  const { name, track, elements, wheels, staticTravel: rest } = mechanism;
  if (track === undefined) return absent(`the ${name} axle has no track`);
  const missing = stiffnessMissing(elements);
  if (missing !== undefined) return absent(missing);
  if ("kind" in trim.results) return trim.results;
  const [heights, tyres, mass] = [heightsOf(mechanism, states), tyreRoll(mechanism), axleMass(mechanism)];
  if ("kind" in heights) return heights;
  if (typeof tyres !== "number") return tyres;
  if (typeof mass !== "number") return mass;
  if (wheels.left.unsprungMass === undefined || wheels.right.unsprungMass === undefined)
    return absent(`the ${name} wheels have no unsprung-mass`);
  const at = (q: number): Figure => momentAt(elements, states.at(rest - q, rest + q), trim, track);
  const still = at(0);
  if (typeof still !== "number") return still;
  const travels = new Set([0, ...states.roll.map(({ right }) => right - rest), ...steps]);
  const samples = [...travels].flatMap((q) => {
    const moment = at(q);
    return typeof moment === "number" ? [{ angle: (2 * q) / track, moment }] : [];
  });
  return {
    samples: samples.sort((a, b) => a.angle - b.angle),
    track,
    tyres,
    mass,
    unsprung: wheels.left.unsprungMass + wheels.right.unsprungMass,
    ...heights,
  };
}
