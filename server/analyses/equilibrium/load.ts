/**
 * What a load case puts on the car: the force of gravity and acceleration on each kilogram in the road's frame, the
 * pressure of the air, and the settings of what is held.
 *
 * Gravity in the road's frame, uphill by γ and banked by β: g (−sin γ, sin β cos γ, −cos β cos γ). A level lateral
 * acceleration a is (a cos β) along the road and (a sin β) square to it.
 */
import type { Held } from "../../elements/element.js";
import type { Vec3 } from "../../maths/vec3.js";
import { GRAVITY } from "../loads.js";
import type { Air } from "../../elements/air.js";
import { AT_REST, type LoadCase } from "../../elements/loaded-car.js";
import type { Carrier } from "./carriers.js";
import type { Standing } from "./standing.js";

export interface Load {
  /** N/kg */
  readonly body: Vec3;
  /** ½ ρ v², Pa */
  readonly pressure: number;
  readonly air: Air | undefined;
  /** Of each carrier that holds something, by its place among the carriers. */
  readonly held: ReadonlyMap<number, Held>;
}

const DESIGN: Held = { kind: "length", value: 0 };

const heldIn = ({ hold }: Carrier, name: string): Held => hold?.cases.get(name) ?? hold?.always ?? DESIGN;

export function bodyForce({ lateral, longitudinal, vertical, banking, gradient }: LoadCase): Vec3 {
  const [sinB, cosB, sinG, cosG] = [Math.sin(banking), Math.cos(banking), Math.sin(gradient), Math.cos(gradient)];
  return [
    -GRAVITY * sinG - longitudinal,
    GRAVITY * sinB * cosG - lateral * cosB,
    -GRAVITY * cosB * cosG - lateral * sinB - vertical,
  ];
}

/** @param share of the way from rest to the case, 0 … 1 */
export function loadOf({ car, air, carriers }: Standing, at: LoadCase, share = 1): Load {
  const [rest, full] = [bodyForce(AT_REST), bodyForce(at)];
  const part = (axis: 0 | 1 | 2): number => rest[axis] + share * (full[axis] - rest[axis]);
  const held = new Map<number, Held>();
  for (const [i, carrier] of carriers.entries()) {
    if (carrier.hold === undefined) continue;
    const { kind, value } = heldIn(carrier, at.name);
    held.set(i, { kind, value: share * value });
  }
  return {
    body: [part(0), part(1), part(2)],
    pressure: (share * (car.density * at.speed * at.speed)) / 2,
    air,
    held,
  };
}
