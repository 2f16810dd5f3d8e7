/** A T-shaped bar in a pose: stem, cross arm and drop links. Both wheels move the ends of its cross arm. */
import type { PanelTee } from "../../../server/lsp/protocol-panel.js";
import { type Point3, sum, times } from "./geometry.js";
import { endPoint, type PosedAxle } from "./scene.js";
import { gridWeights, vectorAt } from "./tables.js";

export interface TeeShape {
  readonly foot: Point3;
  /** The middle of the cross arm, where the stem ends. */
  readonly head: Point3;
  readonly arm: readonly [Point3, Point3];
  readonly links: readonly (readonly [Point3, Point3])[];
}

/** Undefined where its drop links do not reach. */
export function teeShape(tee: PanelTee, axles: readonly PosedAxle[]): TeeShape | undefined {
  const axle = axles.find(({ data }) => data.name === tee.axle);
  if (axle === undefined) return undefined;
  const { left, right } = axle;
  const weights = gridWeights(left.data.travels, right.data.travels, left.travel, right.travel);
  const still = gridWeights([0], [0], 0, 0);
  const at = (table: PanelTee["ends"]["left"]): Point3 | undefined =>
    vectorAt(table, table.length === 3 ? still : weights);
  const [l, r] = [at(tee.ends.left), at(tee.ends.right)];
  if (l === undefined || r === undefined) return undefined;
  const links = [
    [l, tee.links.left],
    [r, tee.links.right],
  ] as const;
  return {
    foot: tee.foot,
    head: times(0.5, sum(l, r)),
    arm: [l, r],
    links: links.flatMap(([end, far]) => {
      const other = far && endPoint(far, axles);
      return other === undefined ? [] : [[end, other] as const];
    }),
  };
}
