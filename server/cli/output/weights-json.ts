/** Corner weights for a machine. The form is described by `schema/weights.json` of the package. */
import type { Figure } from "../../analyses/results.js";
import type { CheckedCar } from "../../findings/context.js";
import { isAbsent } from "../../views/figures.js";
import { type ShowUnit, unitsOfCar } from "../../views/units-of-car.js";
import { known, massesOf, type ScalesFigures, type Weighed, weightsOf } from "../../views/weights-page.js";
import { absence, json, quantity, rounded } from "./json.js";

const CORNERS = ["frontLeft", "frontRight", "rearLeft", "rearRight"] as const;

export function weightsJson(car: CheckedCar): string {
  const unit = unitsOfCar(car.model);
  const { loads, weighed, target, scales } = weightsOf(car);
  return json({
    car: car.model.name,
    setup: car.model.setup ?? null,
    masses: massesJson(car, unit),
    atTrim: {
      loads: isAbsent(loads) ? absence(loads) : byCorner(loads, (load) => quantity(load, unit("force"))),
      shares: sharesJson(weighed),
    },
    target: rounded(target),
    scales: scales === undefined ? null : scalesJson(scales, unit),
  });
}

const byCorner = (values: readonly number[], of: (value: number) => unknown): object =>
  Object.fromEntries(CORNERS.map((corner, i) => [corner, of(values[i] ?? 0)]));

const share = (figure: Figure): unknown => (isAbsent(figure) ? absence(figure) : rounded(figure));

const sharesJson = (weighed: ReturnType<typeof weightsOf>["weighed"]): object =>
  isAbsent(weighed) ? absence(weighed) : sharesOf(weighed);

const sharesOf = ({ front, left, cross }: Weighed): object => ({
  front: rounded(front),
  left: rounded(left),
  cross: rounded(cross),
});

function massesJson(car: CheckedCar, unit: ShowUnit): object {
  const { total, frontShare, centre, sprung } = massesOf(car);
  const place = ({ behind, left, height }: typeof centre): object => ({
    behindFrontAxle: quantity(known(behind), unit("length")),
    left: quantity(known(left), unit("length")),
    aboveGround: quantity(known(height), unit("length")),
  });
  return {
    total: quantity(known(total), unit("mass")),
    front: share(known(frontShare)),
    centreOfGravity: place(centre),
    sprung: {
      mass: quantity(known(sprung.mass), unit("mass")),
      centreOfGravity: place(sprung.centre),
      rollInertia: quantity(known(sprung.rollInertia), unit("inertia")),
      pitchInertia: quantity(known(sprung.pitchInertia), unit("inertia")),
    },
  };
}

function scalesJson({ readings, weighed, turns, roll }: ScalesFigures, unit: ShowUnit): object {
  return {
    readings: byCorner(readings, (reading) => quantity(reading, unit("mass"))),
    shares: sharesJson(weighed),
    centreOfGravityLeft: isAbsent(weighed) ? absence(weighed) : quantity(weighed.centre[1], unit("length")),
    turns: isAbsent(turns)
      ? absence(turns)
      : turns.map(({ path, raise, movement, torsional, turns: count, after }) => ({
          adjuster: path,
          raise: quantity(raise, unit("length")),
          movement: quantity(movement, unit(torsional ? "angle" : "length")),
          turns: quantity(count, "turn"),
          after: quantity(after, unit("mass")),
        })),
    roll: quantity(roll, unit("angle")),
  };
}
