/**
 * The resolved car as its equilibrium takes it: both axles' mechanisms, what joins them, masses, brakes, drive, air, and
 * the load cases.
 *
 * Invariant: never throws; what the text leaves out is left out, and the analysis says what it misses.
 */
import { type Air, type AreaLaw, isoDensity } from "../elements/air.js";
import type { CarUnderLoad, LoadCase, LoadedAxle, WheelPlace } from "../elements/loaded-car.js";
import { monotoneSurface, type Surface } from "../maths/monotone-surface.js";
import type { AxleModel, CarModel, CaseModel, ResolvedBlock, WheelModel } from "../model/car.js";
import { assembleAxle } from "./assemble.js";
import { blockKey, joiningKey, type KeyOf } from "./axle-key.js";
import { assembleCarElements } from "./car-elements.js";
import { massesOfCar } from "./masses.js";
import { blockOf, numberOf, quantityOf, statementOf, tableOf } from "./reading.js";

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

const loadedAxle = (axle: AxleModel | undefined, car: CarModel, mechanismOf: MechanismOf): LoadedAxle | undefined =>
  axle && {
    mechanism: mechanismOf(axle, car),
    places: placesOf(axle),
    drawnHeight: axle.drawnRideHeight?.value,
  };

const NO_TABLE =
  "the height-table of the aero block needs two or more rear heights, each with the same two or more front heights";

function airOf(car: CarModel, aero: ResolvedBlock | undefined): Air | string | undefined {
  if (aero === undefined) return undefined;
  const [front, rear] = [areaLaw(aero, car, "front"), areaLaw(aero, car, "rear")];
  const drag = dragOf(aero, car);
  if (typeof front === "string" || typeof rear === "string") return NO_TABLE;
  return typeof drag === "string" ? drag : { front, rear, drag, lag: numberOf(aero, "lag") };
}

const NO_DRAG_AREA = "the drag of the aero block needs an area, or drag rows in the height-table";

/** By the rows of the table where it has some, else by its area and slopes. */
function dragOf(aero: ResolvedBlock, car: CarModel): Air["drag"] | string {
  const drag = blockOf(aero, "drag");
  const height = numberOf(drag, "height");
  if (drag === undefined || height === undefined) return undefined;
  const table = blockOf(aero, "height-table");
  if (table?.statements.some(({ block }) => blockOf(block, "drag") !== undefined)) {
    const surface = surfaceOf(table, "drag");
    return surface === undefined ? NO_TABLE : { law: { kind: "table", surface }, height };
  }
  const area = numberOf(drag, "area");
  if (area === undefined) return NO_DRAG_AREA;
  const [byFront, byRear] = [numberOf(drag, "by-front") ?? 0, numberOf(drag, "by-rear") ?? 0];
  return { law: { kind: "slopes", area, byFront, byRear, at: drawnHeights(car) }, height };
}

const drawnHeights = ({ axles: { front, rear } }: CarModel): readonly [number, number] => [
  front?.drawnRideHeight?.value ?? 0,
  rear?.drawnRideHeight?.value ?? 0,
];

/** Rows of all rear heights, in rising order, as one table; undefined where they do not make up one. */
function surfaceOf(table: ResolvedBlock, of: "front" | "rear" | "drag"): Surface | undefined {
  const rows = table.statements.flatMap(({ word, block, values: [value] }) => {
    const measured =
      word === "rear-height" && block !== undefined ? tableOf(blockOf(block, of)?.rows ?? []) : undefined;
    return measured === undefined || value?.kind !== "number" ? [] : [{ height: value.value, ...measured }];
  });
  const sorted = [...rows].sort((a, b) => a.height - b.height);
  const [first] = sorted;
  const heights = sorted.map(({ height }) => height);
  const isOne =
    new Set(heights).size === heights.length && sorted.every(({ keys }) => keys.join() === first?.keys.join());
  if (first === undefined || !isOne || heights.length < 2 || first.keys.length < 2) return undefined;
  return monotoneSurface(
    first.keys,
    heights,
    sorted.map(({ values }) => values),
  );
}

function areaLaw(aero: ResolvedBlock, car: CarModel, of: "front" | "rear"): AreaLaw | string {
  const table = blockOf(aero, "height-table");
  if (table !== undefined) {
    const surface = surfaceOf(table, of);
    return surface === undefined ? NO_TABLE : { kind: "table", surface };
  }
  const slopes = blockOf(aero, "height-slopes");
  return {
    kind: "slopes",
    area: numberOf(aero, `downforce-${of}`) ?? 0,
    byFront: numberOf(slopes, `${of}-by-front`) ?? 0,
    byRear: numberOf(slopes, `${of}-by-rear`) ?? 0,
    at: drawnHeights(car),
  };
}

/** As stated, else of the standard atmosphere at the altitude, at a temperature that is not the standard's where one is given. */
function densityOf(aero: ResolvedBlock | undefined): number {
  return numberOf(aero, "density") ?? isoDensity(numberOf(aero, "altitude") ?? 0, numberOf(aero, "temperature"));
}

function pointsOf({ block }: CarModel): CarUnderLoad["points"] {
  return block.statements.flatMap(({ word, name, block: inner }) => {
    const [value] = word === "clearance-point" ? (statementOf(inner, "point")?.values ?? []) : [];
    if (name === undefined || value?.kind !== "point") return [];
    const [x = 0, y = 0, z = 0] = value.value;
    return [{ name: name.text, point: [x, y, z] }];
  });
}

type MechanismOf = typeof assembleAxle;

/** @param mechanismOf assembles an axle, or has it at hand */
export function assembleLoadedCar(car: CarModel, mechanismOf: MechanismOf = assembleAxle): CarUnderLoad {
  const { brakes, drive } = car;
  const aero = blockOf(car.block, "aero");
  return {
    axles: { front: loadedAxle(car.axles.front, car, mechanismOf), rear: loadedAxle(car.axles.rear, car, mechanismOf) },
    joining: assembleCarElements(car).elements,
    cgHeight: massesOfCar(car).centre.height,
    brakes: brakes?.front && { front: brakes.front.value, mounting: brakes.mounting },
    drive,
    air: airOf(car, aero),
    rack: numberOf(car.axles.front?.block, "rack"),
    density: densityOf(aero),
    points: pointsOf(car),
  };
}

/** A slope of the road: an angle, or the rise for each length along the level. */
function slopeOf(block: ResolvedBlock, word: string): number {
  const stated = quantityOf(block, word);
  if (stated === undefined) return 0;
  return stated.dimension === "share" ? Math.atan(stated.value) : stated.value;
}

/** Of the rack as a length, of the steering wheel in turns or as an angle. */
function steerOf(block: ResolvedBlock): Pick<LoadCase, "steer" | "turns"> {
  const stated = quantityOf(block, "steer");
  if (stated === undefined) return { steer: 0, turns: 0 };
  const { value, dimension } = stated;
  if (dimension === "length") return { steer: value, turns: 0 };
  return { steer: 0, turns: dimension === "angle" ? value / (2 * Math.PI) : value };
}

export const loadCaseOf = ({ name, block }: CaseModel): LoadCase => ({
  name,
  speed: numberOf(block, "speed") ?? 0,
  lateral: numberOf(block, "lateral") ?? 0,
  longitudinal: numberOf(block, "longitudinal") ?? 0,
  vertical: numberOf(block, "vertical") ?? 0,
  banking: slopeOf(block, "banking"),
  gradient: slopeOf(block, "gradient"),
  ...steerOf(block),
});

/** The content key of a car and its cases: every number that their equilibrium rests on, and every name. */
export function loadedCarKey(car: CarModel, cases: readonly LoadCase[], keyOf?: KeyOf): string {
  const { brakes, drive, block } = car;
  const whole = block.statements.filter(({ word }) => WHOLE.has(word));
  const { height } = massesOfCar(car).centre;
  const rack = numberOf(car.axles.front?.block, "rack");
  const parts = [height, brakes?.front?.value, brakes?.mounting, drive, rack].map((part) => part ?? "-");
  return `${parts.join(" ")}${blockKey({ ...block, statements: whole, rows: [] })}${JSON.stringify([cases, pointsOf(car)])}\n${joiningKey(car, keyOf)}`;
}

/** Words of the car as a whole that the equilibrium reads from its block. */
const WHOLE: ReadonlySet<string> = new Set(["aero"]);
