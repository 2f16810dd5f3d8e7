/**
 * What the wheels carry at rest, from the car's mass: a step that trim and the figures at rest share.
 *
 * Both tyres of an axle carry alike, unless the centre of gravity lies beside the centre plane or the cross weight is to be
 * another than one half (`elements/corner-loads.ts`).
 */
import type { AxleMechanism } from "../elements/mechanism.js";
import type { AxleMotion } from "../linkage/corner.js";
import { absent } from "./absent.js";
import type { Absent, Figure } from "./results.js";

/** Standard gravity, m/s². Source: 3rd General Conference on Weights and Measures, 1901. */
export const GRAVITY = 9.80665;

/** Mass on the axle, kg, unsprung included. */
export function axleMass({ name, carMass, massFront, massMissing }: AxleMechanism): Figure {
  if (massMissing !== undefined) return absent(massMissing);
  if (carMass === undefined) return absent("the car has no mass, so the load at rest is not known");
  if (massFront === undefined) return absent("the car has no mass-front, so the load at rest is not known");
  return carMass * (name === "front" ? massFront : 1 - massFront);
}

/** Vertical load on one tyre of the axle, N. */
export function tyreLoad(mechanism: AxleMechanism, side: "left" | "right"): Figure {
  if (mechanism.keptMissing !== undefined) return absent(mechanism.keptMissing);
  if (mechanism.kept !== undefined) return mechanism.kept.loads[side];
  const mass = axleMass(mechanism);
  if (typeof mass !== "number") return mass;
  const { leftMore = 0 } = mechanism;
  if (typeof leftMore === "string") return absent(leftMore);
  return ((mass + (side === "left" ? leftMore : -leftMore)) * GRAVITY) / 2;
}

/** Sprung mass of the axle, kg. */
export function sprungMass(mechanism: AxleMechanism): Figure {
  const mass = axleMass(mechanism);
  if (typeof mass !== "number") return mass;
  const { left, right } = mechanism.wheels;
  if (left.unsprungMass === undefined || right.unsprungMass === undefined) return noUnsprung(mechanism);
  const sprung = mass - left.unsprungMass - right.unsprungMass;
  return sprung > 0 ? sprung : absent(`the ${mechanism.name} axle's unsprung masses leave nothing of its mass`);
}

const noUnsprung = ({ name }: AxleMechanism): Absent => absent(`the ${name} wheels have no unsprung-mass`);

/**
 * What the elements have to carry for each wheel, N: ∂U/∂z with z the wheel centre's travel. By virtual work
 * W = N · dz_contact/dz − m_u g: where geometry tells how the contact point rises with the wheel centre (a per
 * mille or two more than it), that is taken into account.
 */
export function carriedLoads(
  mechanism: AxleMechanism,
  rest: AxleMotion,
): { readonly left: number; readonly right: number } | Absent {
  const onTyre = { left: tyreLoad(mechanism, "left"), right: tyreLoad(mechanism, "right") };
  if (typeof onTyre.left !== "number") return onTyre.left;
  if (typeof onTyre.right !== "number") return onTyre.right;
  const { wheels } = mechanism;
  if (wheels.left.unsprungMass === undefined || wheels.right.unsprungMass === undefined) return noUnsprung(mechanism);
  const rise = (side: "left" | "right"): number => rest[side].wheel?.contact.d[2] ?? 1;
  return {
    left: onTyre.left * rise("left") - wheels.left.unsprungMass * GRAVITY,
    right: onTyre.right * rise("right") - wheels.right.unsprungMass * GRAVITY,
  };
}
