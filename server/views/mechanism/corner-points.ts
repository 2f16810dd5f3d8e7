/**
 * The points and lines of a corner that the panel draws, by where they are written: joints, chassis points, the rocker with its eyes.
 *
 * Ends of elements that are no eye (a chassis point, a lever's end) are added by `endPoints`; `PointList` keeps each once.
 */
import type { Body } from "../../linkage/corner.js";
import type { CornerModel, HardpointCorner, PlanarCorner, RockerModel, Rod, Vec2, Vec3 } from "../../model/car.js";
import type { Given, Origin } from "../../model/origin.js";
import type { PanelLine, PanelPlace, PanelPoint, PanelRocker } from "./data.js";
import { axisOf, bodyTable, rackTable, type Samples, turnOf } from "./sampled-corner.js";

export type PlaceOf = (origin: Origin) => PanelPlace | undefined;

/** Points in the order that they are found in, each id once. */
export class PointList {
  readonly points: PanelPoint[] = [];
  readonly #known = new Map<string, number>();

  add(id: string, role: PanelPoint["role"], make: () => Pick<PanelPoint, "at" | "place">): number {
    const known = this.#known.get(id);
    if (known !== undefined) return known;
    const index = this.points.push({ id, role, ...make() }) - 1;
    this.#known.set(id, index);
    return index;
  }

  indexOf(id: string): number | undefined {
    return this.#known.get(id);
  }
}

export interface DrawnCorner {
  readonly list: PointList;
  readonly lines: readonly PanelLine[];
  readonly rocker: PanelRocker | undefined;
}

/** @param x of the wheel centre, where a planar corner lies */
export function cornerPoints(corner: CornerModel, samples: Samples, x: number, placeOf: PlaceOf): DrawnCorner {
  switch (corner.kind) {
    case "hardpoints":
      return spatial(corner, samples, placeOf);
    case "planar":
      return planar(corner, samples, x, placeOf);
    case "ratio":
    case "incomplete":
      return { list: new PointList(), lines: [], rocker: undefined };
  }
}

interface Adding {
  readonly list: PointList;
  readonly samples: Samples;
  readonly placeOf: PlaceOf;
}

function add(
  { list, samples, placeOf }: Adding,
  id: string,
  role: PanelPoint["role"],
  body: Body,
  point: Given<Vec3>,
): number {
  return list.add(id, role, () => ({ at: bodyTable(samples, body, point.value), place: placeOf(point.origin) }));
}

function spatial(corner: HardpointCorner, samples: Samples, placeOf: PlaceOf): DrawnCorner {
  const to: Adding = { list: new PointList(), samples, placeOf };
  const { lower, upper, trackRod, rod, rocker } = corner;
  const wishbone = (body: "lower-wishbone" | "upper-wishbone", { fore, aft, outer }: typeof lower): PanelLine => ({
    role: "wishbone",
    points: [
      add(to, `${body}.fore`, "chassis", "chassis", fore),
      add(to, `${body}.outer`, "joint", body, outer),
      add(to, `${body}.aft`, "chassis", "chassis", aft),
    ],
  });
  const wishbones = [wishbone("lower-wishbone", lower), wishbone("upper-wishbone", upper)];
  const ahead = trackRod.outer.value[0] > lower.outer.value[0] ? 1 : -1;
  const inner = to.list.add("track-rod.inner", "chassis", () => ({
    at: rackTable(samples, trackRod.inner.value, ahead),
    place: placeOf(trackRod.inner.origin),
  }));
  const outer = add(to, "track-rod.outer", "joint", "upright", trackRod.outer);
  const upright = [to.list.indexOf("lower-wishbone.outer") ?? 0, to.list.indexOf("upper-wishbone.outer") ?? 0, outer];
  const lines: PanelLine[] = [
    ...wishbones,
    { role: "upright", points: upright },
    { role: "track-rod", points: [inner, outer] },
    ...rodLine(to, rod),
  ];
  return { list: to.list, lines, rocker: rocker && turning(to, rocker, rod) };
}

function rodLine(to: Adding, rod: Pick<Rod, "kind" | "on" | "outer" | "inner"> | undefined): readonly PanelLine[] {
  if (rod === undefined) return [];
  const outer = add(to, `${rod.kind}.outer`, "joint", rod.on, rod.outer);
  const inner = add(to, `${rod.kind}.inner`, "joint", "rocker", rod.inner);
  return [{ role: "rod", points: [outer, inner] }];
}

function turning(
  to: Adding,
  { pivot, axis, eyes }: Pick<RockerModel, "pivot" | "axis" | "eyes">,
  rod: Pick<Rod, "kind" | "inner"> | undefined,
): PanelRocker {
  const at = add(to, "rocker.pivot", "pivot", "chassis", pivot);
  const named = [...eyes].map(([name, eye]) => ({
    index: add(to, `rocker.${name}`, "eye", "rocker", eye),
    design: eye.value,
  }));
  const inner = rod === undefined ? undefined : to.list.indexOf(`${rod.kind}.inner`);
  const around = [
    ...named,
    ...(inner === undefined || rod === undefined ? [] : [{ index: inner, design: rod.inner.value }]),
  ];
  const direction = axisOf(axis.value);
  const [first] = around.slice(-1);
  return {
    pivot: at,
    axis: direction,
    outline: outline(pivot.value, direction, [{ index: at, design: pivot.value }, ...around]),
    angle:
      first === undefined ? [] : turnOf(to.list.points[first.index]?.at ?? [], first.design, pivot.value, direction),
  };
}

/** Hull about the middle of them all, so that the pivot may lie on its edge: by the angle about the rocker's axis. */
function outline(
  pivot: Vec3,
  axis: Vec3,
  all: readonly { readonly index: number; readonly design: Vec3 }[],
): readonly number[] {
  const u: Vec3 = Math.abs(axis[2]) < 0.9 ? [-axis[1], axis[0], 0] : [1, 0, 0];
  const v: Vec3 = [axis[1] * u[2] - axis[2] * u[1], axis[2] * u[0] - axis[0] * u[2], axis[0] * u[1] - axis[1] * u[0]];
  const flat = all.map(({ index, design }) => {
    const d = [design[0] - pivot[0], design[1] - pivot[1], design[2] - pivot[2]] as const;
    return { index, x: d[0] * u[0] + d[1] * u[1] + d[2] * u[2], y: d[0] * v[0] + d[1] * v[1] + d[2] * v[2] };
  });
  const hull = convexHull(flat);
  return hull.map(({ index }) => index);
}

interface Flat {
  readonly index: number;
  readonly x: number;
  readonly y: number;
}

/** Monotone chain (A. M. Andrew, 1979). */
function convexHull(points: readonly Flat[]): readonly Flat[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (order: readonly Flat[]): Flat[] => {
    const chain: Flat[] = [];
    for (const p of order) {
      for (
        let [a, b] = chain.slice(-2);
        a !== undefined && b !== undefined && turn(a, b, p) <= 0;
        [a, b] = chain.slice(-2)
      )
        chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return sorted.length < 3 ? sorted : [...half(sorted), ...half([...sorted].reverse())];
}

const turn = (a: Flat, b: Flat, c: Flat): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

function planar(
  { lower, upper, rod, rocker }: PlanarCorner,
  samples: Samples,
  x: number,
  placeOf: PlaceOf,
): DrawnCorner {
  const to: Adding = { list: new PointList(), samples, placeOf };
  const lift = (point: Given<Vec2>): Given<Vec3> => ({ ...point, value: [x, point.value[0], point.value[1]] });
  const arm = (body: "lower-wishbone" | "upper-wishbone", { inner, outer }: typeof lower): PanelLine => ({
    role: "wishbone",
    points: [
      add(to, `${body}.inner`, "chassis", "chassis", lift(inner)),
      add(to, `${body}.outer`, "joint", body, lift(outer)),
    ],
  });
  const arms = [arm("lower-wishbone", lower), arm("upper-wishbone", upper)];
  const upright = arms.map(({ points }) => points[1] ?? 0);
  const spatialRod = rod && { ...rod, outer: lift(rod.outer), inner: lift(rod.inner) };
  const lines: PanelLine[] = [...arms, { role: "upright", points: upright }, ...rodLine(to, spatialRod)];
  const turned = rocker && {
    pivot: lift(rocker.pivot),
    axis: { ...lift(rocker.pivot), value: [1, 0, 0] as Vec3 },
    eyes: new Map([...rocker.eyes].map(([name, eye]) => [name, lift(eye)])),
  };
  return { list: to.list, lines, rocker: turned && turning(to, turned, spatialRod) };
}
