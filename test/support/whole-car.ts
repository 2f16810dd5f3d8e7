/** Cars for the whole-car analyses: the check case CAR7, and what is varied about it. */
import type { WholeCar } from "../../server/analyses/whole-car/car-data.js";
import { mirroredAxle, mirroredMatrix } from "../../server/analyses/whole-car/dynamics.js";

const wheel = (unsprungMass: number) => ({ unsprungMass, tyreRate: 220e3, tyreDamping: 0 });

/** CAR7 of the check values: invented numbers, no published source. */
export const car7: WholeCar = {
  wheelbase: 2.7,
  sprung: { mass: 1200, rollInertia: 450, pitchInertia: 1900, behindFront: 1.25 },
  front: mirroredAxle(1.52, wheel(40), { stiffness: mirroredMatrix(30e3, 9e3), damping: mirroredMatrix(2400) }),
  rear: mirroredAxle(1.5, wheel(45), { stiffness: mirroredMatrix(32e3, 4e3), damping: mirroredMatrix(2600) }),
};

/** CAR7 with tyre damping, inerters, a crossed element and unlike sides: nothing falls apart or out. */
export const crookedCar: WholeCar = {
  ...car7,
  sprung: { ...car7.sprung, left: 0.03 },
  front: {
    ...car7.front,
    left: { unsprungMass: 41, tyreRate: 221e3, tyreDamping: 300 },
    right: { unsprungMass: 38, tyreRate: 215e3, tyreDamping: 280 },
    damping: [
      [2500, -150],
      [-150, 2300],
    ],
    inertance: [
      [12, -4],
      [-4, 15],
    ],
  },
  cross: {
    stiffness: [
      [2000, 0, -2000, 0],
      [0, 0, 0, 0],
      [-2000, 0, 2000, 0],
      [0, 0, 0, 0],
    ],
    damping: mirroredCross(60),
    inertance: mirroredCross(3),
  },
  rollGravity: 3200,
  air: {
    slopes: [
      [-9000, 2500],
      [1500, -12000],
    ],
    lag: 0.015,
  },
};

/** An element moved in warp only: c ∇s∇sᵀ with ∇s = (−1, 1, 1, −1)/2. */
function mirroredCross(c: number): number[][] {
  const gradient = [-0.5, 0.5, 0.5, -0.5];
  return gradient.map((a) => gradient.map((b) => c * a * b));
}
