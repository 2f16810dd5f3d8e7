/**
 * What corner weights rest on, from the words of the car: the pads' readings, the wanted cross weight, where the wheels
 * stand, and what is turned at each corner with its thread.
 */
import type { CornerAdjusterData, WeighingData } from "../elements/weighing.js";
import type { AxleModel, CarModel } from "../model/car.js";
import { assembleAxle } from "./assemble.js";
import { crossWeightOf } from "./masses.js";
import { blockOf, numberOf, statementOf } from "./reading.js";

const PADS = ["front-left", "front-right", "rear-left", "rear-right"] as const;

/** Readings that are not all there are no readings. */
function readingsOf(car: CarModel): WeighingData["readings"] {
  const block = blockOf(car.block, "scales");
  const [fl, fr, rl, rr] = PADS.map((pad) => numberOf(block, pad));
  return fl === undefined || fr === undefined || rl === undefined || rr === undefined ? undefined : [fl, fr, rl, rr];
}

/** x of both axle lines, forward from the rear one: wheelbase apart. y by the tracks. */
function placesOf({ wheelbase, axles }: CarModel): WeighingData["places"] {
  if (wheelbase === undefined) return "the car has no wheelbase";
  const [front, rear] = [axles.front?.track?.value, axles.rear?.track?.value];
  if (front === undefined || rear === undefined) {
    return `the ${front === undefined ? "front" : "rear"} axle has no track`;
  }
  const base = wheelbase.value;
  return { x: [base, base, 0, 0], y: [front / 2, -front / 2, rear / 2, -rear / 2] };
}

function adjusterOf(axle: AxleModel | undefined, side: "left" | "right"): CornerAdjusterData | string {
  if (axle === undefined) return "the car has one axle only";
  const { name, trim, corner } = axle;
  const linkage = corner[side];
  if (trim.by === "push-rod") {
    const rod = linkage.kind === "hardpoints" || linkage.kind === "planar" ? linkage.rod : undefined;
    if (rod === undefined) return `the ${name} ${side} linkage has no push or pull rod`;
    return { kind: "rod", path: `${name}.${side}.${rod.kind}`, thread: rod.thread?.value };
  }
  const element = axle.elements.find((one) => one.name === trim.element && one.side === side);
  if (element === undefined)
    return `the ${name} axle is not trimmed at each of its wheels, so that there is nothing to turn there`;
  // A seat's thread is that of the ride height that it sets: change of height for one turn.
  const thread = numberOf(statementOf(axle.block, "ride-height")?.block, "thread");
  return { kind: "seat", path: element.path, thread };
}

const AXLES = ["front", "rear"] as const;

export function weighingOf(car: CarModel): WeighingData {
  const { target, within } = crossWeightOf(car);
  const { front, rear } = car.axles;
  return {
    readings: readingsOf(car),
    target,
    within,
    places: placesOf(car),
    corners: AXLES.flatMap((axle) => [adjusterOf(car.axles[axle], "left"), adjusterOf(car.axles[axle], "right")]),
    mechanisms: { front: () => front && assembleAxle(front, car), rear: () => rear && assembleAxle(rear, car) },
  };
}
