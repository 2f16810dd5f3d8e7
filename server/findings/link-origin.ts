/** Where a link of an axle is written: for "the link that binds". */
import type { BindingLink } from "../linkage/corner.js";
import type { AxleModel } from "../model/car.js";
import type { Origin } from "../model/origin.js";

export function linkOrigin(
  axle: AxleModel,
  {
    link,
    side,
    element,
  }: { readonly link: BindingLink; readonly side: "left" | "right"; readonly element?: string | undefined },
): Origin | undefined {
  if (element !== undefined) return axle.elements.find(({ path }) => path === element)?.nameOrigin;
  const corner = axle.corner[side];
  if (corner.kind !== "hardpoints" && corner.kind !== "planar") return undefined;
  switch (link) {
    case "push-rod":
    case "pull-rod":
      return corner.rod?.outer.origin;
    case "lower-wishbone":
      return corner.lower.outer.origin;
    case "upper-wishbone":
      return corner.upper.outer.origin;
    case "track-rod":
      return corner.kind === "hardpoints" ? corner.trackRod.outer.origin : undefined;
    case "drop-link":
      return undefined;
  }
}
