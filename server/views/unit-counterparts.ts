/**
 * The unit of the other system in which an engineer would write the same value: `N/mm` for
 * `lbf/in`, `km/h` for `mph`. Built from the parts of a compound, so that the counterpart is of
 * like size (`m^2` becomes `ft^2`, `mm^2` becomes `in^2`).
 */
import { parseUnit, usualUnit, dimensionOfUnit } from "../quantities/index.js";

export type UnitTarget = "si" | "inch";

/** Compounds whose usual counterpart is not the one that their parts would give. */
const whole: Readonly<Record<UnitTarget, Readonly<Record<string, string>>>> = {
  inch: { "km/h": "mph" },
  si: {
    mph: "km/h",
    "in^3": "ml",
    "lbf*in": "N*m",
    "lbf*in/deg": "N*m/deg",
    "lbf*in/rad": "N*m/rad",
    "lbf*in*s/deg": "N*m*s/deg",
    "lbf*in*s/rad": "N*m*s/rad",
    "lb*in^2": "kg*m^2",
    "slug*ft^2": "kg*m^2",
    "psi*s/in^3": "bar*s/l",
  },
};

const parts: Readonly<Record<UnitTarget, Readonly<Record<string, string>>>> = {
  inch: {
    um: "in",
    mm: "in",
    cm: "in",
    m: "ft",
    kg: "lb",
    N: "lbf",
    kN: "lbf",
    Pa: "psi",
    kPa: "psi",
    MPa: "psi",
    GPa: "psi",
    bar: "psi",
    ml: "in^3",
    l: "in^3",
  },
  si: { in: "mm", ft: "m", lb: "kg", slug: "kg", lbf: "N", psi: "bar" },
};

/** Undefined where the unit is at home in the target system already, or has no counterpart. */
export function counterpart(unit: string, target: UnitTarget): string | undefined {
  const text = whole[target][unit] ?? unit.replace(/[A-Za-z]+/g, (part) => parts[target][part] ?? part);
  if (text === unit) return undefined;
  if (sameDimension(text, unit)) return text;
  const dimension = dimensionOfUnit(unit);
  const usual = dimension === undefined ? undefined : usualUnit(dimension, target);
  return usual !== undefined && usual !== unit && sameDimension(usual, unit) ? usual : undefined;
}

function sameDimension(a: string, b: string): boolean {
  const [one, other] = [parseUnit(a), parseUnit(b)];
  return one !== undefined && other !== undefined && JSON.stringify(one.dimension) === JSON.stringify(other.dimension);
}
