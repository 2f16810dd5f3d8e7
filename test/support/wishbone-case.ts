/**
 * The check case of a double-wishbone corner as geometry, from test/data/wishbone-case.json:
 * invented hard points in mm, solved outside this project by two formulations (nested closed form and plain
 * constraint equations) and in 50-digit arithmetic.
 */
import wishbone from "../data/wishbone-case.json" with { type: "json" };
import type { HardpointGeometry } from "../../server/linkage/geometry.js";
import type { Vec3 } from "../../server/maths/vec3.js";

export const DEGREE = Math.PI / 180;

/** Three numbers in mm as a point in m. */
export const metres = (mm: readonly number[]): Vec3 => [(mm[0] ?? 0) / 1000, (mm[1] ?? 0) / 1000, (mm[2] ?? 0) / 1000];

export type PointName = keyof typeof wishbone.hardpoints_mm;

/** A named hard point in m. */
export const hardpoint = (name: PointName): Vec3 => metres(wishbone.hardpoints_mm[name]);

const pivot = hardpoint("RP");
const axisEnd = hardpoint("RQ");

export const wishboneGeometry: HardpointGeometry = {
  lower: { fore: hardpoint("LWF"), aft: hardpoint("LWR"), outer: hardpoint("LBJ") },
  upper: { fore: hardpoint("UWF"), aft: hardpoint("UWR"), outer: hardpoint("UBJ") },
  trackRod: { inner: hardpoint("TRI"), outer: hardpoint("TRO") },
  rod: { kind: "push-rod", on: "lower-wishbone", outer: hardpoint("PRO"), inner: hardpoint("PRI") },
  rocker: { pivot, axis: [axisEnd[0] - pivot[0], axisEnd[1] - pivot[1], axisEnd[2] - pivot[2]] },
  wheel: {
    centre: hardpoint("WC"),
    camber: wishbone.static_camber_deg * DEGREE,
    toe: wishbone.static_toe_in_deg * DEGREE,
    loadedRadius: wishbone.wheel_radius_mm / 1000,
  },
};

export { wishbone };
