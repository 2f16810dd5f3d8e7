/**
 * Where wheels and elements are at each heave and roll: wheel centre, contact point, camber, toe,
 * rocker angle and every element's deflection, with the reason where a link binds.
 *
 * Travels from heave h and body roll angle φ (ISO, positive lifts the left side): z_L = h − φt/2,
 * z_R = h + φt/2. Right-hand points are in the car frame (y negative); angles are each wheel's own.
 */
import type { Element } from "../elements/element.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import type { CornerMotion, Unreachable } from "../linkage/corner.js";
import { mirror, type Vec3 } from "../maths/vec3.js";
import { absent, bindsReason } from "./absent.js";
import type { Absent, KinematicsRow, WheelRow } from "./results.js";
import { deflectionAt } from "./sampled.js";
import { type AxlePositions, axlePositions, type State } from "./states.js";

function wheelRow(motion: CornerMotion | Unreachable, side: "left" | "right"): WheelRow | Absent {
  if ("kind" in motion) return absent(bindsReason(motion, side));
  const { wheel, rocker, travel } = motion;
  if (wheel === undefined) return absent("the axle is given by ratios, without geometry");
  const inCar = (p: Vec3): Vec3 => (side === "left" ? p : mirror(p));
  return {
    travel,
    centre: inCar(wheel.centre.p),
    contact: inCar(wheel.contact.p),
    camber: wheel.camber.value,
    toe: wheel.toe.value,
    rocker: rocker === undefined ? absent("there is no rocker") : rocker.value,
  };
}

const deflections = (elements: readonly Element[], state: State): KinematicsRow["elements"] =>
  told(elements).map((element) => ({ path: element.path, deflection: deflectionAt(element, state) }));

/** What stands beside an element of the same path has no line of its own. */
const told = (elements: readonly Element[]): readonly Element[] => elements.filter(({ part }) => part === undefined);

/** Travels of both wheels; a roll angle without a track gives none. */
function travels(track: number | undefined, heave: number, roll: number): readonly [number, number] | undefined {
  if (roll === 0) return [heave, heave];
  return track === undefined ? undefined : [heave - (roll * track) / 2, heave + (roll * track) / 2];
}

function row(mechanism: AxleMechanism, positions: AxlePositions, heave: number, roll: number): KinematicsRow {
  const wheels = travels(mechanism.track, heave, roll);
  if (wheels === undefined) {
    const none = absent(`the ${mechanism.name} axle has no track, so that a roll angle gives no travels`);
    const elements = told(mechanism.elements).map(({ path }) => ({ path, deflection: none }));
    return { heave, roll, left: none, right: none, elements };
  }
  const [left, right] = wheels;
  const why = mechanism.cornerMissing;
  return {
    heave,
    roll,
    left: why.left === undefined ? wheelRow(positions.left(left), "left") : absent(why.left),
    right: why.right === undefined ? wheelRow(positions.right(right), "right") : absent(why.right),
    elements: deflections(mechanism.elements, positions.at(left, right)),
  };
}

/**
 * One row for every heave and roll, heave by heave.
 *
 * @param heaves mean travel of the wheels, m, bump positive
 * @param rolls body roll angle from the wheels' travels, rad; needs the track unless 0
 */
export function kinematics(
  mechanism: AxleMechanism,
  heaves: readonly number[],
  rolls: readonly number[],
): readonly KinematicsRow[] {
  const positions = axlePositions(mechanism);
  return heaves.flatMap((heave) => rolls.map((roll) => row(mechanism, positions, heave, roll)));
}
