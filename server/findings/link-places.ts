/** Where a link of an axle is written: for "the link that binds", and for what a set-up does to it. */
import type { BindingLink } from "../linkage/corner.js";
import type { AxleModel, CornerModel } from "../model/car.js";
import type { Origin, Side } from "../model/origin.js";

export interface LinkOfAxle {
  readonly link: BindingLink;
  readonly side: Side;
  /** The bar that a drop link belongs to, where that is known. */
  readonly element?: string | undefined;
}

/** The points that the link's motion rests on, its outer end first; for a drop link its bar. */
export function linkPlaces(axle: AxleModel, { link, side, element }: LinkOfAxle): readonly Origin[] {
  if (link === "drop-link") return barPlaces(axle, side, element);
  return pointsOf(axle.corner[side], link).map(({ origin }) => origin);
}

function pointsOf(corner: CornerModel, link: BindingLink): readonly { readonly origin: Origin }[] {
  if (corner.kind !== "hardpoints" && corner.kind !== "planar") return [];
  const { rod, rocker } = corner;
  switch (link) {
    case "push-rod":
    case "pull-rod":
      return [rod?.outer, rod?.inner, rocker?.pivot].filter((point) => point !== undefined);
    case "lower-wishbone":
      return Object.values(corner.lower);
    case "upper-wishbone":
      return [corner.upper.outer, ...Object.values(corner.upper)];
    case "track-rod":
      return corner.kind === "hardpoints" ? [corner.trackRod.outer, corner.trackRod.inner] : [];
    case "drop-link":
      return [];
  }
}

/** Of an axle's only bar where it is not said which one. */
function barPlaces({ elements }: AxleModel, side: Side, path: string | undefined): readonly Origin[] {
  const bars = elements.filter(({ connection }) => connection?.kind === "bar" || connection?.kind === "tee");
  const bar = path === undefined && bars.length === 1 ? bars[0] : bars.find((one) => one.path === path);
  const joined = bar?.connection;
  if (bar === undefined || (joined?.kind !== "bar" && joined?.kind !== "tee")) return [];
  const link = joined.links[side];
  const arm =
    joined.kind === "bar" ? [joined.levers[side].end, joined.levers[side].pivot] : [joined.ends[side], joined.head];
  return [bar.nameOrigin, ...(link === undefined ? [] : [link.origin]), ...arm.map(({ origin }) => origin)];
}
