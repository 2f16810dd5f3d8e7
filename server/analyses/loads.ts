/**
 * What the wheels carry at rest, from the car's mass: a step that trim and the figures at rest share.
 *
 * The centre of gravity lies in the plane y = 0, so that both tyres of an axle carry alike.
 */
import type { AxleMechanism } from "../elements/mechanism.js";
import type { AxleMotion } from "../linkage/corner.js";
import { absent } from "./absent.js";
import type { Absent, Figure } from "./results.js";

/** Standard gravity, m/s². Source: 3rd General Conference on Weights and Measures, 1901. */
export const GRAVITY = 9.80665;

/** Mass on the axle, kg, unsprung included. */
export function axleMass({ name, carMass, massFront }: AxleMechanism): Figure {
  if (carMass === undefined) return absent("the car has no mass, so the load at rest is not known");
  if (massFront === undefined) return absent("the car has no mass-front, so the load at rest is not known");
  return carMass * (name === "front" ? massFront : 1 - massFront);
}

/** Vertical load on one tyre of the axle, N. */
export function tyreLoad(mechanism: AxleMechanism): Figure {
  const mass = axleMass(mechanism);
  return typeof mass === "number" ? (mass * GRAVITY) / 2 : mass;
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
  const onTyre = tyreLoad(mechanism);
  if (typeof onTyre !== "number") return onTyre;
  const { wheels } = mechanism;
  if (wheels.left.unsprungMass === undefined || wheels.right.unsprungMass === undefined) return noUnsprung(mechanism);
  const rise = (side: "left" | "right"): number => rest[side].wheel?.contact.d[2] ?? 1;
  return {
    left: onTyre * rise("left") - wheels.left.unsprungMass * GRAVITY,
    right: onTyre * rise("right") - wheels.right.unsprungMass * GRAVITY,
  };
}
