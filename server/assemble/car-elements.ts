/**
 * Elements at car level, which join the axles, with the mechanisms that their ends follow.
 *
 * Invariant: never throws; what cannot be built is left out with a plain reason, and the rest works.
 */
import type { CarConnection } from "../elements/car-connection.js";
import { carBetween } from "../elements/connections/car-between.js";
import { byCarRatios } from "../elements/connections/car-ratio.js";
import { rockersTwist } from "../elements/connections/car-twists.js";
import { carSweptVolume } from "../elements/connections/cylinders.js";
import type { RatioCurve } from "../elements/connections/ratio.js";
import type { AssemblyProblem, AxleMechanism, AxleName, CarElement, CarEnd } from "../elements/mechanism.js";
import { CAR_MODES, type CarMode } from "../elements/patterns.js";
import { dot } from "../maths/vec3.js";
import type { Attachment, CarModel, ConnectionModel, ElementModel } from "../model/car.js";
import { assembleAxle, builtCorners } from "./assemble.js";
import { type Built, builtElement, builtLink } from "./built-element.js";
import {
  type AxleParts,
  basisOf,
  endOf,
  isUnconnected,
  ratioCurve,
  rockerAxis,
  type Unconnected,
} from "./connections.js";
import { circuitOf, type CylindersModel } from "./hydraulic.js";
import { lawOf } from "./laws.js";

export interface CarAssembly {
  readonly elements: readonly CarElement[];
  readonly axles: { readonly front: AxleMechanism | undefined; readonly rear: AxleMechanism | undefined };
  readonly problems: readonly AssemblyProblem[];
}

type Parts = Readonly<Record<AxleName, AxleParts | undefined>>;

const fault = (missing: string): Unconnected => ({ missing, atFault: true });
const noAxle = (axle: AxleName): Unconnected => ({ missing: `the car has no ${axle} axle`, atFault: false });

function carEnd(attachment: Attachment, parts: Parts): CarEnd | Unconnected {
  const { kind } = attachment;
  if (kind === "chassis") return { axle: undefined, end: { kind, point: attachment.point.value } };
  const { axle } = attachment;
  const there = parts[axle];
  if (there === undefined) return noAxle(axle);
  const end = endOf(attachment, there);
  return isUnconnected(end) ? end : { axle, end };
}

const basis = (parts: Parts): "hardpoints" | "planar" =>
  [parts.front, parts.rear].some((axle) => axle !== undefined && basisOf(axle) === "planar") ? "planar" : "hardpoints";

function twoPoint(ends: readonly [Attachment, Attachment], parts: Parts): CarConnection | Unconnected {
  const [first, second] = [carEnd(ends[0], parts), carEnd(ends[1], parts)];
  if (isUnconnected(first)) return first;
  if (isUnconnected(second)) return second;
  const made = carBetween(first, second, basis(parts));
  return made.kind === "no-deflection" ? fault("its two ends fall together") : made;
}

const isCarMode = (mode: string): mode is CarMode => (CAR_MODES as readonly string[]).includes(mode);

type RatioOfCar = Extract<ConnectionModel, { kind: "ratio" }>;

function ratios(model: RatioOfCar, parts: Parts): CarConnection | Unconnected {
  const missing = (["front", "rear"] as const).find((axle) => parts[axle] === undefined);
  if (missing !== undefined) return noAxle(missing);
  const curves = new Map<CarMode, RatioCurve>();
  for (const { mode, ratio } of model.ratios) {
    const curve = ratioCurve(ratio);
    if (curve === undefined) return fault(`its ratio table in ${mode} has fewer than two points`);
    if (isCarMode(mode)) curves.set(mode, curve);
  }
  return curves.size > 0 ? byCarRatios(curves, model.torsional) : fault("its ratio names no mode of the car");
}

/** Axes that are further from one line than this (cosine) cannot carry one bar. Common practice, no published source. */
const IN_LINE = 0.9;

type TwistOfCar = Extract<ConnectionModel, { kind: "twists" }>;

function twist({ of, against }: TwistOfCar, parts: Parts): CarConnection | Unconnected {
  const own = axisOf(of.axle, of.side, parts);
  if ("missing" in own) return own;
  if (against.body === "chassis") return rockersTwist(of, undefined, basis(parts));
  if (of.axle === against.axle && of.side === against.side) return fault("both of its ends are on one rocker");
  const other = axisOf(against.axle, against.side, parts);
  if ("missing" in other) return other;
  const along = dot(own.axis, other.axis) / Math.sqrt(dot(own.axis, own.axis) * dot(other.axis, other.axis));
  if (Math.abs(along) < IN_LINE) return fault("the axes of its two rockers do not run along one line");
  return rockersTwist(of, { ...against, sense: along > 0 ? 1 : -1 }, basis(parts));
}

function axisOf(axle: AxleName, side: "left" | "right", parts: Parts) {
  const there = parts[axle];
  if (there === undefined) return noAxle(axle);
  const axis = rockerAxis(there, side);
  return isUnconnected(axis) ? axis : { axis };
}

function connectionOf({ connection }: ElementModel, parts: Parts): CarConnection | Unconnected {
  switch (connection?.kind) {
    case "between":
      return twoPoint(connection.ends, parts);
    case "ratio":
      return ratios(connection, parts);
    case "twists":
      return twist(connection, parts);
    default:
      return { missing: "it is not connected", atFault: false };
  }
}

function buildElement(model: ElementModel, parts: Parts): Built<CarConnection> {
  const { connection: written } = model;
  if (written?.kind === "cylinders") {
    const joined = cylindersOf(written, parts);
    return builtLink(model, isUnconnected(joined) ? joined : circuitOf(written, model.block, joined), carSweptVolume);
  }
  const made = connectionOf(model, parts);
  return builtElement(model, made, lawOf(model, { connection: isUnconnected(made) ? undefined : made, tied: false }));
}

function cylindersOf({ cylinders }: CylindersModel, parts: Parts): ReadonlyMap<string, CarConnection> | Unconnected {
  const joined = new Map<string, CarConnection>();
  for (const { name, ends } of cylinders) {
    const made = twoPoint(ends, parts);
    if (isUnconnected(made)) return { ...made, missing: `its cylinder ${name} is not joined: ${made.missing}` };
    joined.set(name, made);
  }
  return joined;
}

/** The elements at car level; nothing is built where there are none. */
export function assembleCarElements(car: CarModel): CarAssembly {
  const { front, rear } = car.axles;
  if (car.elements.length === 0) return { elements: [], axles: { front: undefined, rear: undefined }, problems: [] };
  const parts = {
    front: front && { axle: front, corners: builtCorners(front) },
    rear: rear && { axle: rear, corners: builtCorners(rear) },
  };
  const built = car.elements.map((model) => buildElement(model, parts));
  return {
    elements: built.flatMap(({ elements }) => elements),
    axles: { front: front && assembleAxle(front, car), rear: rear && assembleAxle(rear, car) },
    problems: built.flatMap(({ problems }) => problems),
  };
}
