/**
 * The units that a compound may be made of, and the usual ones of each dimension.
 *
 * A base unit is an exact ratio of whole numbers to SI (times π where it is an angle in degrees):
 * definitions of NIST SP 811 (2008), appendix B, and ISO 80000 (inch 25.4 mm, pound
 * 0.45359237 kg, standard gravity 9.80665 m/s²), all exact. `g` is standard gravity, never a gram.
 * The arithmetic is in `server/quantities`.
 */
import { dimensions, type Exponents } from "./dimensions.js";
import type { DimensionName } from "./word.js";

export interface BaseUnit {
  /** SI value = value · numerator / denominator · π^pi + offset. */
  readonly numerator: bigint;
  readonly denominator: bigint;
  readonly pi: 0 | 1;
  readonly offset?: number;
  readonly dimension: Exponents;
  readonly system: UnitSystem;
}

/** `neutral` units (deg, %, s, g) are at home in both. */
export type UnitSystem = "si" | "inch" | "neutral";

type Known = Exclude<DimensionName, "any">;

const unit = (dimension: Known, system: UnitSystem, numerator: bigint, denominator = 1n): BaseUnit => ({
  numerator,
  denominator,
  pi: 0,
  dimension: dimensions[dimension],
  system,
});

const poundForce = [45359237n * 980665n, 10n ** 13n] as const;

export const baseUnits: ReadonlyMap<string, BaseUnit> = new Map<string, BaseUnit>([
  ["m", unit("length", "si", 1n)],
  ["cm", unit("length", "si", 1n, 100n)],
  ["mm", unit("length", "si", 1n, 1000n)],
  ["um", unit("length", "si", 1n, 1_000_000n)],
  ["km", unit("length", "si", 1000n)],
  ["in", unit("length", "inch", 254n, 10_000n)],
  ["ft", unit("length", "inch", 3048n, 10_000n)],
  ["kg", unit("mass", "si", 1n)],
  ["lb", unit("mass", "inch", 45359237n, 100_000_000n)],
  // One pound-force accelerates it by one foot per second squared.
  ["slug", unit("mass", "inch", poundForce[0] * 10_000n, poundForce[1] * 3048n)],
  ["s", unit("time", "neutral", 1n)],
  ["ms", unit("time", "neutral", 1n, 1000n)],
  ["min", unit("time", "neutral", 60n)],
  ["h", unit("time", "neutral", 3600n)],
  ["rad", unit("angle", "neutral", 1n)],
  ["mrad", unit("angle", "neutral", 1n, 1000n)],
  ["deg", { ...unit("angle", "neutral", 1n, 180n), pi: 1 }],
  ["arcmin", { ...unit("angle", "neutral", 1n, 10_800n), pi: 1 }],
  ["l", unit("volume", "si", 1n, 1000n)],
  ["ml", unit("volume", "si", 1n, 1_000_000n)],
  ["mph", unit("speed", "inch", 1_609_344n, 3_600_000n)],
  ["g", unit("acceleration", "neutral", 980_665n, 100_000n)],
  ["N", unit("force", "si", 1n)],
  ["kN", unit("force", "si", 1000n)],
  ["lbf", unit("force", "inch", ...poundForce)],
  ["Pa", unit("pressure", "si", 1n)],
  ["kPa", unit("pressure", "si", 1000n)],
  ["MPa", unit("pressure", "si", 1_000_000n)],
  ["GPa", unit("pressure", "si", 1_000_000_000n)],
  ["bar", unit("pressure", "si", 100_000n)],
  ["psi", unit("pressure", "inch", poundForce[0] * 10n ** 8n, poundForce[1] * 254n * 254n)],
  ["Hz", unit("frequency", "neutral", 1n)],
  ["K", unit("temperature", "si", 1n)],
  ["degC", { ...unit("temperature", "si", 1n), offset: 273.15 }],
  ["turn", unit("turns", "neutral", 1n)],
  ["%", unit("share", "neutral", 1n, 100n)],
]);

interface UsualUnits {
  readonly si: readonly string[];
  readonly inch: readonly string[];
}

const both = (...units: string[]): UsualUnits => ({ si: units, inch: units });

/** Usual units of each dimension by system, the most usual first. */
export const usualUnits: Readonly<Record<Known, UsualUnits>> = {
  number: both(""),
  count: both(""),
  share: both("%"),
  length: { si: ["mm", "m", "cm"], inch: ["in", "ft"] },
  mass: { si: ["kg"], inch: ["lb"] },
  time: both("s", "ms"),
  angle: both("deg", "rad"),
  area: { si: ["m^2"], inch: ["ft^2"] },
  "piston-area": { si: ["mm^2", "cm^2"], inch: ["in^2"] },
  volume: { si: ["ml", "l", "mm^3", "m^3"], inch: ["in^3"] },
  speed: { si: ["km/h", "m/s"], inch: ["mph", "ft/s"] },
  "damper-speed": { si: ["mm/s", "m/s"], inch: ["in/s"] },
  "angular-speed": both("deg/s", "rad/s"),
  acceleration: { si: ["g", "m/s^2"], inch: ["g", "ft/s^2"] },
  force: { si: ["N", "kN"], inch: ["lbf"] },
  moment: { si: ["N*m", "N*mm", "kN*m"], inch: ["lbf*ft", "lbf*in"] },
  pressure: { si: ["bar", "kPa", "Pa"], inch: ["psi"] },
  modulus: { si: ["GPa", "MPa"], inch: ["psi"] },
  stress: { si: ["MPa"], inch: ["psi"] },
  rate: { si: ["N/mm", "kN/m", "N/m"], inch: ["lbf/in", "lbf/ft"] },
  "torsional-rate": { si: ["N*m/deg", "N*m/rad"], inch: ["lbf*ft/deg", "lbf*in/deg", "lbf*in/rad"] },
  damping: { si: ["N*s/mm", "N*s/m", "kN*s/m"], inch: ["lbf*s/in"] },
  "torsional-damping": { si: ["N*m*s/deg", "N*m*s/rad"], inch: ["lbf*in*s/deg", "lbf*in*s/rad"] },
  inertia: { si: ["kg*m^2"], inch: ["lb*ft^2", "lb*in^2", "slug*ft^2"] },
  thread: { si: ["mm/turn"], inch: ["in/turn"] },
  turns: both("turn"),
  "area-slope": { si: ["m^2/mm", "m^2/m"], inch: ["ft^2/in"] },
  "angle-per-length": { si: ["deg/mm", "rad/m"], inch: ["deg/in", "rad/in"] },
  "angle-per-acceleration": both("deg/g"),
  "per-length": { si: ["1/mm", "1/m"], inch: ["1/in"] },
  "flow-resistance": { si: ["bar*s/l", "Pa*s/m^3"], inch: ["psi*s/in^3"] },
  density: { si: ["kg/m^3"], inch: ["lb/ft^3"] },
  temperature: both("degC", "K"),
  frequency: both("Hz"),
};
