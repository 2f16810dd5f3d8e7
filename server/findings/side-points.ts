/** The points of one side of an axle by what they are called: wheel, linkage and levers of bars. */
import type { AxleModel, HardpointCorner, PlanarCorner } from "../model/car.js";
import type { Given, Side } from "../model/origin.js";

export type Point = Given<readonly number[]>;
type Named = readonly (readonly [string, Point])[];

/** Names begin with the axle's: "front rocker eye third". */
export function pointsOfAxle(axle: AxleModel, side: Side): Named {
  const corner = axle.corner[side];
  const { centre } = axle.wheel[side];
  const linkage =
    corner.kind === "hardpoints" ? ofHardpoints(corner) : corner.kind === "planar" ? ofPlanar(corner) : [];
  const named: Named = [
    ...(centre === undefined ? [] : [["wheel centre", centre] as const]),
    ...linkage,
    ...ofBars(axle, side),
  ];
  return named.map(([what, point]) => [`${axle.name} ${what}`, point] as const);
}

function ofHardpoints({ lower, upper, trackRod, rod, rocker }: HardpointCorner): Named {
  return [
    ...within("lower-wishbone", lower),
    ...within("upper-wishbone", upper),
    ...within("track-rod", trackRod),
    ...(rod === undefined ? [] : within(rod.kind, { outer: rod.outer, inner: rod.inner })),
    ...(rocker === undefined ? [] : within("rocker", { pivot: rocker.pivot, axis: rocker.axis })),
    ...eyes(rocker?.eyes),
  ];
}

function ofPlanar({ lower, upper, rod, rocker }: PlanarCorner): Named {
  return [
    ...within("lower-wishbone", lower),
    ...within("upper-wishbone", upper),
    ...(rod === undefined ? [] : within(rod.kind, { outer: rod.outer, inner: rod.inner })),
    ...(rocker === undefined ? [] : within("rocker", { pivot: rocker.pivot })),
    ...eyes(rocker?.eyes),
  ];
}

function ofBars({ elements }: AxleModel, side: Side): Named {
  return elements.flatMap(({ name, connection }) => {
    if (connection?.kind === "tee") return within(`${name} tee`, { end: connection.ends[side] });
    return connection?.kind === "bar" ? within(`${name} lever`, connection.levers[side]) : [];
  });
}

const within = (part: string, points: object): Named =>
  Object.entries(points).map(([word, point]: [string, Point]) => [`${part} ${word}`, point] as const);

const eyes = (named: ReadonlyMap<string, Point> | undefined): Named =>
  [...(named ?? [])].map(([eye, point]) => [`rocker eye ${eye}`, point] as const);
