/** The masses of the resolved car: its own words, and the lines beside them. */
import type { Standing } from "../elements/corner-loads.js";
import { type CarMasses, type MassData, type MassLine, massesOf, type WheelPlace } from "../elements/masses.js";
import type { AxleModel, CarModel, ResolvedStatement, Vec3, WheelModel } from "../model/car.js";
import { numberOf, quantitiesOf, statementOf } from "./reading.js";

const LINES: ReadonlySet<string> = new Set(["driver", "fuel", "ballast"]);

/** The statements that are masses of their own. */
export const massStatements = (car: CarModel): readonly ResolvedStatement[] =>
  car.block.statements.filter(({ word, block }) => LINES.has(word) && block !== undefined);

function lineOf({ word, name, block }: ResolvedStatement): MassLine {
  const [centre] = statementOf(block, "centre")?.values ?? [];
  return {
    name: name?.text ?? word,
    mass: numberOf(block, "mass"),
    centre: centre?.kind === "point" ? vectorOf(centre.value) : undefined,
  };
}

const vectorOf = ([x = 0, y = 0, z = 0]: readonly number[]): Vec3 => [x, y, z];

function wheelPlace({ centre, unsprungMass, loadedRadius, camber }: WheelModel): WheelPlace {
  const radius = loadedRadius && loadedRadius.value * Math.cos(camber?.value ?? 0);
  return { centre: centre?.value, unsprungMass: unsprungMass?.value, radius };
}

const axlePlace = ({ drawnRideHeight, rideHeight, wheel }: AxleModel): MassData["axles"]["front"] => ({
  drawnRideHeight: drawnRideHeight?.value,
  rideHeight: rideHeight?.value,
  wheels: { left: wheelPlace(wheel.left), right: wheelPlace(wheel.right) },
});

/** What of the car its masses are worked out from. */
export function massDataOf(car: CarModel): MassData {
  const { front, rear } = car.axles;
  return {
    mass: car.mass?.value,
    massFront: car.massFront?.value,
    cgHeight: car.cgHeight?.value,
    cgLeft: numberOf(car.block, "cg-left") ?? 0,
    rollInertia: car.rollInertia?.value,
    pitchInertia: car.pitchInertia?.value,
    wheelbase: car.wheelbase?.value,
    lines: massStatements(car).map(lineOf),
    axles: { front: front && axlePlace(front), rear: rear && axlePlace(rear) },
  };
}

/** Masses of the car or set-up, lines added: what every analysis takes for the car's mass. */
export const massesOfCar = (car: CarModel): CarMasses => massesOf(massDataOf(car));

/** Where none is written, as the vocabulary says. */
const USUAL_CROSS = { target: 0.5, within: 0.005 };

export interface CrossWeight {
  /** Share that the front right and the rear left wheel are to carry together. */
  readonly target: number;
  readonly within: number;
}

export function crossWeightOf(car: CarModel): CrossWeight {
  const [target, within] = quantitiesOf(car.block, "cross-weight");
  return { target: target?.value ?? USUAL_CROSS.target, within: within?.value ?? USUAL_CROSS.within };
}

/** An axle whose trim turns something at each of its wheels. */
function hasSeatEachSide(axle: AxleModel | undefined): boolean {
  if (axle === undefined) return false;
  const { by, element } = axle.trim;
  return by === "push-rod" || axle.elements.some(({ name, side }) => name === element && side !== undefined);
}

/** What the loads at rest are worked out from. */
export function restingOf(car: CarModel, { total, frontShare, centre }: CarMasses): Standing {
  const { front, rear } = car.axles;
  return {
    total,
    frontShare,
    left: centre.left,
    tracks: { front: front?.track?.value, rear: rear?.track?.value },
    crossWeight: crossWeightOf(car).target,
    hasSeatEachSide: { front: hasSeatEachSide(front), rear: hasSeatEachSide(rear) },
  };
}
