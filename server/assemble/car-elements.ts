/**
 * Elements at car level, which join the axles, with the mechanisms that their ends follow.
 *
 * Two-point ones are built; for the others it is said that they are not computed yet.
 */
import type { AxleMechanism, AxleName, CarElement, CarEnd } from "../elements/mechanism.js";
import type { Attachment, CarModel, ElementModel } from "../model/car.js";
import { assembleAxle, builtCorners } from "./assemble.js";
import { type AxleParts, endOf, isUnconnected, type Unconnected } from "./connections.js";

export interface CarAssembly {
  readonly elements: readonly CarElement[];
  readonly axles: { readonly front: AxleMechanism | undefined; readonly rear: AxleMechanism | undefined };
}

type Parts = Readonly<Record<AxleName, AxleParts | undefined>>;

function carEnd(attachment: Attachment, parts: Parts): CarEnd | Unconnected {
  const { kind } = attachment;
  if (kind === "chassis") return { axle: undefined, end: { kind, point: attachment.point.value } };
  const { axle } = attachment;
  const there = parts[axle];
  if (there === undefined) return { missing: `the car has no ${axle} axle`, atFault: false };
  const end = endOf(attachment, there);
  return isUnconnected(end) ? end : { axle, end };
}

function endsOf({ connection, kind }: ElementModel, parts: Parts): CarElement["ends"] | string {
  if (connection === undefined) {
    return kind === "hydraulic-link" ? "the motion of a hydraulic link is not computed yet" : "it is not connected";
  }
  if (connection.kind !== "between") return "of the elements that join the axles only two-point ones are computed yet";
  const [first, second] = [carEnd(connection.ends[0], parts), carEnd(connection.ends[1], parts)];
  if (isUnconnected(first)) return first.missing;
  return isUnconnected(second) ? second.missing : [first, second];
}

function carElement(model: ElementModel, parts: Parts): CarElement {
  const ends = endsOf(model, parts);
  const { path, kind } = model;
  return typeof ends === "string"
    ? { path, kind, for: model.for, ends: undefined, missing: ends }
    : { path, kind, for: model.for, ends, missing: undefined };
}

/** The elements at car level; nothing is built where there are none. */
export function assembleCarElements(car: CarModel): CarAssembly {
  const { front, rear } = car.axles;
  if (car.elements.length === 0) return { elements: [], axles: { front: undefined, rear: undefined } };
  const parts = {
    front: front && { axle: front, corners: builtCorners(front) },
    rear: rear && { axle: rear, corners: builtCorners(rear) },
  };
  return {
    elements: car.elements.map((model) => carElement(model, parts)),
    axles: { front: front && assembleAxle(front, car), rear: rear && assembleAxle(rear, car) },
  };
}
