/**
 * `keep-seats` in a set-up: the mechanisms of both axles on the seats and rods of what it derives from, with the place
 * where the car comes to rest on them.
 */
import type { CarJoining } from "../analyses/analyse-car.js";
import { isAbsent } from "../analyses/absent.js";
import { standOnKeptSeats } from "../analyses/kept-seats.js";
import type { AxleAnalysis, CarAnalysis } from "../analyses/results.js";
import { assembleAxle } from "../assemble/assemble.js";
import { massesOfCar } from "../assemble/masses.js";
import type { AxleMechanism } from "../elements/mechanism.js";
import type { AxleModel, CarModel } from "../model/car.js";
import { keepsSeats } from "../model/keeps-seats.js";

export interface KeptAxles {
  readonly front: AxleMechanism | undefined;
  readonly rear: AxleMechanism | undefined;
}

/** An axle of the set-up with its rods as they were set; or why they cannot be. */
function withRods(axle: AxleModel, car: CarModel, { rates }: AxleAnalysis): AxleMechanism | string {
  const mechanism = assembleAxle(axle, car);
  if (isAbsent(rates.trim)) return `the seats of what it derives from are not known: ${rates.trim.reason}`;
  if (rates.rods === undefined) return mechanism;
  const longer = mechanism.rods?.longer(rates.rods.left, rates.rods.right);
  return longer ?? `the ${axle.name} rockers cannot be reached by the ${rates.rods.kind}s as they were set`;
}

/** What has to be there for the car to stand, or what is not. */
function ready(car: CarModel, before: CarAnalysis) {
  const { front, rear } = car.axles;
  const was = before.axles;
  if (front === undefined || rear === undefined || was.front === undefined || was.rear === undefined) {
    return "the car has one axle only";
  }
  const [ahead, behind] = [withRods(front, car, was.front), withRods(rear, car, was.rear)];
  if (typeof ahead === "string") return ahead;
  if (typeof behind === "string") return behind;
  const { total, frontShare, centre } = massesOfCar(car);
  if (typeof total === "string") return total;
  if (typeof frontShare === "string") return frontShare;
  if (typeof centre.left === "string") return centre.left;
  if (car.wheelbase === undefined) return "the car has no wheelbase";
  if (ahead.track === undefined || behind.track === undefined) return "an axle has no track";
  return {
    front: ahead,
    rear: behind,
    mass: total,
    frontShare,
    left: centre.left,
    wheelbase: car.wheelbase.value,
    tracks: { front: ahead.track, rear: behind.track },
    drawn: { front: front.drawnRideHeight?.value, rear: rear.drawnRideHeight?.value },
  };
}

type Loads = readonly [number, number, number, number];

function beforeOf({ axles }: CarAnalysis): { readonly loads: Loads; readonly travels: Loads } | string {
  const wheels = [
    axles.front?.atRest.left,
    axles.front?.atRest.right,
    axles.rear?.atRest.left,
    axles.rear?.atRest.right,
  ];
  const loads: number[] = [];
  for (const wheel of wheels) {
    if (wheel === undefined) return "the car has one axle only";
    if (isAbsent(wheel.load)) return wheel.load.reason;
    loads.push(wheel.load);
  }
  const four = (of: readonly number[]): Loads => [of[0] ?? 0, of[1] ?? 0, of[2] ?? 0, of[3] ?? 0];
  return { loads: four(loads), travels: four(wheels.map((wheel) => wheel?.travel ?? 0)) };
}

function seatsOf({ axles }: CarAnalysis): ReadonlyMap<string, number> {
  const all = [axles.front, axles.rear].flatMap((axle) => {
    const trim = axle?.rates.trim;
    return trim === undefined || isAbsent(trim) ? [] : trim;
  });
  return new Map(all.map(({ path, seat }) => [path, seat]));
}

/** @param before figures of the car or set-up whose seats were set; @returns undefined where seats are not kept */
export function keptAxles(
  car: CarModel,
  before: () => CarAnalysis,
  joining: CarJoining | undefined,
): KeptAxles | undefined {
  if (!keepsSeats(car)) return undefined;
  const was = before();
  const there = ready(car, was);
  const rested = beforeOf(was);
  if (typeof there === "string") return without(car, there);
  if (typeof rested === "string") return without(car, rested);
  const stands = standOnKeptSeats({
    ...there,
    joining: joining?.elements ?? [],
    seats: seatsOf(was),
    before: rested,
  });
  if (isAbsent(stands)) return without(car, stands.reason);
  const onSeats = (mechanism: AxleMechanism, name: "front" | "rear"): AxleMechanism => {
    const kept = { ...stands[name], rods: was.axles[name]?.rates.rods };
    const { left, right } = kept.travels;
    return {
      ...mechanism,
      trim: { by: "kept", element: mechanism.trim.element },
      staticTravel: (left + right) / 2,
      rideHeight: kept.rideHeight,
      kept,
    };
  };
  return { front: onSeats(there.front, "front"), rear: onSeats(there.rear, "rear") };
}

/** Axles of which it is not known where they stand. */
function without(car: CarModel, keptMissing: string): KeptAxles {
  const of = (axle: AxleModel | undefined): AxleMechanism | undefined =>
    axle && { ...assembleAxle(axle, car), keptMissing };
  return { front: of(car.axles.front), rear: of(car.axles.rear) };
}
