/**
 * What of an axle can be drawn at design position: links, rockers, wheels and elements as points in the frame of the car.
 *
 * In: the resolved axle. Out: true points of both sides (ISO 8855, m). What has no place (motion ratios) is told by name.
 */
import type {
  Attachment,
  AxleModel,
  ConnectionModel,
  CornerModel,
  ElementKind,
  ElementModel,
  HardpointCorner,
  PlanarCorner,
} from "../../model/car.js";
import type { Given, Side } from "../../model/origin.js";

export type Point = readonly [number, number, number];

export type LinkRole = "wishbone" | "track-rod" | "rod" | "lever" | "drop-link" | "bar";

export interface DrawnLink {
  readonly role: LinkRole;
  readonly from: Point;
  readonly to: Point;
}

export interface DrawnWheel {
  readonly side: Side;
  readonly centre: Point;
  readonly radius: number;
  /** rad, ISO 8855 */
  readonly camber: number;
}

export interface DrawnElement {
  readonly path: string;
  readonly kind: ElementKind;
  /** Undefined where it turns about an axis instead of lying between two points. */
  readonly to: Point | undefined;
  readonly from: Point;
}

export interface AxleShape {
  readonly links: readonly DrawnLink[];
  /** Outlines through pivot, rod and eyes. */
  readonly rockers: readonly (readonly Point[])[];
  readonly wheels: readonly DrawnWheel[];
  readonly elements: readonly DrawnElement[];
  /** Height of the ground. */
  readonly ground: number | undefined;
  /** Elements that have no place. */
  readonly unplaced: readonly string[];
}

const SIDES = ["left", "right"] as const;

export function axleShape(axle: AxleModel): AxleShape {
  const corners = SIDES.map((side) => cornerShape(axle, side, axle.corner[side]));
  const elements = axle.elements.map((element) => elementShape(element, axle));
  const wheels = SIDES.flatMap((side) => wheelShape(axle, side));
  return {
    links: [...corners.flatMap(({ links }) => links), ...elements.flatMap(({ links }) => links)],
    rockers: corners.flatMap(({ rocker }) => (rocker === undefined ? [] : [rocker])),
    wheels,
    elements: elements.flatMap(({ drawn }) => drawn),
    ground: groundOf(axle, wheels),
    unplaced: elements.flatMap(({ drawn, links, path }) => (drawn.length + links.length === 0 ? [path] : [])),
  };
}

function groundOf({ drawnRideHeight }: AxleModel, wheels: readonly DrawnWheel[]): number | undefined {
  if (drawnRideHeight !== undefined) return -drawnRideHeight.value;
  return wheels.length === 0 ? undefined : Math.min(...wheels.map(({ centre, radius }) => centre[2] - radius));
}

function wheelShape({ wheel }: AxleModel, side: Side): readonly DrawnWheel[] {
  const { centre, loadedRadius, camber } = wheel[side];
  if (centre === undefined || loadedRadius === undefined) return [];
  const [x, y, z] = centre.value;
  const outwards = side === "left" ? Math.abs(y) : -Math.abs(y);
  return [{ side, centre: [x, outwards, z], radius: loadedRadius.value, camber: camber?.value ?? 0 }];
}

interface CornerShape {
  readonly links: readonly DrawnLink[];
  readonly rocker: readonly Point[] | undefined;
}

function cornerShape(axle: AxleModel, side: Side, corner: CornerModel): CornerShape {
  switch (corner.kind) {
    case "hardpoints":
      return spatialCorner(corner);
    case "planar":
      return planarCorner(corner, axle.wheel[side].centre?.value[0] ?? 0);
    case "ratio":
    case "incomplete":
      return { links: [], rocker: undefined };
  }
}

function spatialCorner({ lower, upper, trackRod, rod, rocker }: HardpointCorner): CornerShape {
  const wishbones = [lower, upper].flatMap(({ fore, aft, outer }) => [
    link("wishbone", fore.value, outer.value),
    link("wishbone", aft.value, outer.value),
  ]);
  return {
    links: [
      ...wishbones,
      link("track-rod", trackRod.inner.value, trackRod.outer.value),
      ...(rod === undefined ? [] : [link("rod", rod.outer.value, rod.inner.value)]),
    ],
    rocker:
      rocker && outline(rocker.pivot.value, [...(rod === undefined ? [] : [rod.inner.value]), ...points(rocker.eyes)]),
  };
}

function planarCorner({ lower, upper, rod, rocker }: PlanarCorner, x: number): CornerShape {
  const at = ({ value: [y, z] }: Given<readonly [number, number]>): Point => [x, y, z];
  return {
    links: [
      ...[lower, upper].map(({ inner, outer }) => link("wishbone", at(inner), at(outer))),
      ...(rod === undefined ? [] : [link("rod", at(rod.outer), at(rod.inner))]),
    ],
    rocker:
      rocker &&
      outline(at(rocker.pivot), [...(rod === undefined ? [] : [at(rod.inner)]), ...[...rocker.eyes.values()].map(at)]),
  };
}

const link = (role: LinkRole, from: Point, to: Point): DrawnLink => ({ role, from, to });

const points = (eyes: ReadonlyMap<string, Given<Point>>): readonly Point[] =>
  [...eyes.values()].map(({ value }) => value);

/** Around the pivot, in the order of their direction as seen along the car or across it, whichever spreads them more. */
function outline(pivot: Point, around: readonly Point[]): readonly Point[] {
  const spread = (axis: 0 | 1): number => Math.max(...around.map((point) => Math.abs(point[axis] - pivot[axis])), 0);
  const across = spread(1) >= spread(0) ? 1 : 0;
  const angle = (point: Point): number => Math.atan2(point[2] - pivot[2], point[across] - pivot[across]);
  return [...around, pivot].sort((a, b) => angle(a) - angle(b));
}

interface ElementShape {
  readonly path: string;
  readonly drawn: readonly DrawnElement[];
  readonly links: readonly DrawnLink[];
}

function elementShape({ path, kind, connection }: ElementModel, axle: AxleModel): ElementShape {
  const element = (from: Point, to?: Point): DrawnElement => ({ path, kind, from, to });
  if (connection === undefined) return { path, drawn: [], links: [] };
  switch (connection.kind) {
    case "between":
      return { path, drawn: lying(connection.ends, axle, element), links: [] };
    case "twists": {
      const pivot = pivotOf(axle.corner[connection.of.side], axle, connection.of.side);
      return { path, drawn: pivot === undefined ? [] : [element(pivot)], links: [] };
    }
    case "bar":
      return barShape(path, connection, element);
    case "tee":
      return teeShape(path, connection, element);
    case "cylinders":
      return { path, drawn: connection.cylinders.flatMap(({ ends }) => lying(ends, axle, element)), links: [] };
    case "ratio":
      return { path, drawn: [], links: [] };
  }
}

function lying(
  [a, b]: readonly [Attachment, Attachment],
  axle: AxleModel,
  element: (from: Point, to: Point) => DrawnElement,
): readonly DrawnElement[] {
  const [from, to] = [placeOf(a, axle), placeOf(b, axle)];
  return from === undefined || to === undefined ? [] : [element(from, to)];
}

function placeOf(attachment: Attachment, axle: AxleModel): Point | undefined {
  if (attachment.kind !== "lever-end") return attachment.point.value;
  const bar = axle.elements.find(({ name }) => name === attachment.bar)?.connection;
  return bar?.kind === "bar" ? bar.levers[attachment.side].end.value : undefined;
}

function pivotOf(corner: CornerModel, axle: AxleModel, side: Side): Point | undefined {
  if (corner.kind === "hardpoints") return corner.rocker?.pivot.value;
  if (corner.kind !== "planar" || corner.rocker === undefined) return undefined;
  const [y, z] = corner.rocker.pivot.value;
  return [axle.wheel[side].centre?.value[0] ?? 0, y, z];
}

type Bar = Extract<ConnectionModel, { kind: "bar" }>;
type Tee = Extract<ConnectionModel, { kind: "tee" }>;

function barShape(
  path: string,
  { levers, links }: Bar,
  element: (from: Point, to: Point) => DrawnElement,
): ElementShape {
  const drawn = SIDES.flatMap((side) => {
    const { pivot, end } = levers[side];
    const upper = links[side];
    return [
      link("lever", pivot.value, end.value),
      ...(upper === undefined || upper.kind === "lever-end" ? [] : [link("drop-link", end.value, upper.point.value)]),
    ];
  });
  return { path, drawn: [element(levers.left.pivot.value, levers.right.pivot.value)], links: drawn };
}

function teeShape(
  path: string,
  { foot, head, ends, links }: Tee,
  element: (from: Point, to: Point) => DrawnElement,
): ElementShape {
  const drawn = SIDES.flatMap((side) => {
    const upper = links[side];
    return [
      link("lever", head.value, ends[side].value),
      ...(upper === undefined || upper.kind === "lever-end"
        ? []
        : [link("drop-link", ends[side].value, upper.point.value)]),
    ];
  });
  return { path, drawn: [element(foot.value, head.value)], links: drawn };
}
