/**
 * What of an axle's mechanism its points alone decide: both corners, and how its elements follow them. Whoever keeps it
 * may build the axle again with other laws on it.
 *
 * Invariant: two axles with the same `geometryKey` have the same geometry, whatever their rates are.
 */
import type { Connection } from "../elements/element.js";
import type { Sides } from "../elements/mechanism.js";
import type { AxleModel, ElementModel } from "../model/car.js";
import { connectionOf, type Unconnected } from "./connections.js";
import { type BuiltCorner, buildCorner, cornerGeometry, same } from "./corner.js";

export interface AxleGeometry {
  readonly corners: Sides<BuiltCorner>;
  /** Of an element of this axle: the same object every time. */
  connectionOf(element: ElementModel): Connection | Unconnected;
}

/** Both corners; one and the same where the right one mirrors the left one, so that it is solved once. */
export function builtCorners(axle: AxleModel): Sides<BuiltCorner> {
  const left = cornerGeometry(axle, "left");
  const right = cornerGeometry(axle, "right");
  const built = buildCorner(left);
  return { left: built, right: same(left, right) ? built : buildCorner(right) };
}

export function axleGeometry(axle: AxleModel): AxleGeometry {
  const corners = builtCorners(axle);
  const made = new Map<string, Connection | Unconnected>();
  return {
    corners,
    connectionOf(element) {
      const known = made.get(element.path);
      if (known !== undefined) return known;
      const connection = connectionOf(element, { axle, corners });
      made.set(element.path, connection);
      return connection;
    },
  };
}
