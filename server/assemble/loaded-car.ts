/**
 * The resolved car as its equilibrium takes it: both axles' mechanisms, what joins them, masses, brakes, drive, air, and
 * the load cases.
 *
 * Invariant: never throws; what the text leaves out is left out, and the analysis says what it misses.
 */
import { type Air, type AreaLaw, isoDensity } from "../elements/air.js";
import type { CarUnderLoad, LoadCase, LoadedAxle, WheelPlace } from "../elements/loaded-car.js";
import type { AxleModel, CarModel, CaseModel, ResolvedBlock, WheelModel } from "../model/car.js";
import { assembleAxle } from "./assemble.js";
import { blockKey, joiningKey } from "./axle-key.js";
import { assembleCarElements } from "./car-elements.js";
import { massesOfCar } from "./masses.js";
import { blockOf, numberOf, quantityOf } from "./reading.js";

/** A wheel without geometry, from its centre and the track; mirrored on the right. */
function placeOf(axle: AxleModel, { centre, loadedRadius }: WheelModel, side: 1 | -1): WheelPlace | undefined {
  const { track, drawnRideHeight } = axle;
  if (track === undefined || centre === undefined) return undefined;
  const [x, , z] = centre.value;
  const y = (side * track.value) / 2;
  const ground = drawnRideHeight === undefined ? z - (loadedRadius?.value ?? z) : -drawnRideHeight.value;
  return { centre: [x, y, z], contact: [x, y, ground] };
}

function placesOf(axle: AxleModel): LoadedAxle["places"] {
  const [left, right] = [placeOf(axle, axle.wheel.left, 1), placeOf(axle, axle.wheel.right, -1)];
  return left && right && { left, right };
}

const loadedAxle = (axle: AxleModel | undefined, car: CarModel): LoadedAxle | undefined =>
  axle && {
    mechanism: assembleAxle(axle, car),
    places: placesOf(axle),
    drawnHeight: axle.drawnRideHeight?.value,
  };

function airOf(car: CarModel): Air | undefined {
  const aero = blockOf(car.block, "aero");
  if (aero === undefined) return undefined;
  const drag = blockOf(aero, "drag");
  const [area, height] = [numberOf(drag, "area"), numberOf(drag, "height")];
  return {
    front: areaLaw(aero, car, "front"),
    rear: areaLaw(aero, car, "rear"),
    drag: area === undefined || height === undefined ? undefined : { area, height },
    lag: numberOf(aero, "lag"),
  };
}

function areaLaw(aero: ResolvedBlock, { axles }: CarModel, of: "front" | "rear"): AreaLaw {
  const slopes = blockOf(aero, "height-slopes");
  const { front, rear } = axles;
  return {
    kind: "slopes",
    area: numberOf(aero, `downforce-${of}`) ?? 0,
    byFront: numberOf(slopes, `${of}-by-front`) ?? 0,
    byRear: numberOf(slopes, `${of}-by-rear`) ?? 0,
    at: [front?.drawnRideHeight?.value ?? 0, rear?.drawnRideHeight?.value ?? 0],
  };
}

/** As stated, else of the standard atmosphere at the altitude, at a temperature that is not the standard's where one is given. */
function densityOf(aero: ResolvedBlock | undefined): number {
  return numberOf(aero, "density") ?? isoDensity(numberOf(aero, "altitude") ?? 0, numberOf(aero, "temperature"));
}

export function assembleLoadedCar(car: CarModel): CarUnderLoad {
  const { brakes, drive } = car;
  const aero = blockOf(car.block, "aero");
  return {
    axles: { front: loadedAxle(car.axles.front, car), rear: loadedAxle(car.axles.rear, car) },
    joining: assembleCarElements(car).elements,
    cgHeight: massesOfCar(car).centre.height,
    brakes: brakes?.front && { front: brakes.front.value, mounting: brakes.mounting },
    drive,
    air: airOf(car),
    density: densityOf(aero),
    points: [],
  };
}

/** A slope of the road: an angle, or the rise for each length along the level. */
function slopeOf(block: ResolvedBlock, word: string): number {
  const stated = quantityOf(block, word);
  if (stated === undefined) return 0;
  return stated.dimension === "share" ? Math.atan(stated.value) : stated.value;
}

export const loadCaseOf = ({ name, block }: CaseModel): LoadCase => ({
  name,
  speed: numberOf(block, "speed") ?? 0,
  lateral: numberOf(block, "lateral") ?? 0,
  longitudinal: numberOf(block, "longitudinal") ?? 0,
  vertical: numberOf(block, "vertical") ?? 0,
  banking: slopeOf(block, "banking"),
  gradient: slopeOf(block, "gradient"),
});

/** The content key of a car and its cases: every number that their equilibrium rests on, and every name. */
export function loadedCarKey(car: CarModel, cases: readonly LoadCase[]): string {
  const { brakes, drive, block } = car;
  const whole = block.statements.filter(({ word }) => WHOLE.has(word));
  const { height } = massesOfCar(car).centre;
  const parts = [height, brakes?.front?.value, brakes?.mounting, drive].map((part) => part ?? "-");
  return `${parts.join(" ")}${blockKey({ ...block, statements: whole, rows: [] })}${JSON.stringify(cases)}\n${joiningKey(car)}`;
}

/** Words of the car as a whole that the equilibrium reads from its block. */
const WHOLE: ReadonlySet<string> = new Set(["aero", "clearance-point", "wheelbase"]);
