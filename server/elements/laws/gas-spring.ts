/**
 * A gas spring: the pressure of its gas, above atmosphere, on the area of its rod or piston.
 *
 * Units: m, N, J; pressures absolute inside, gauge where they leave. Compression positive; it pushes apart with
 * (p₀ − p_atm) A from design on, and that is its preload.
 *
 * Invariant: continuous, the derivative of its energy; the force may fall with deflection where the area does.
 */
import { monotone } from "../../maths/monotone.js";
import type { FluidState, SpringLaw } from "../element.js";
import type { Curve, Mark } from "./curve.js";
import type { EffectiveArea } from "./effective-area.js";
import { deflectionAt } from "./inverse.js";
import { ATMOSPHERE, type GasCharge, polytropic } from "./polytropic.js";

/** Stiffness of the contact that a charged rod makes behind its gap, N/m. */
export const CONTACT = 20e6;

/**
 * F = (p − p_atm) A, dF/ds = (dp/dv) A² + (p − p_atm) dA/ds, E = ∫F ds from where the gas stands at atmospheric pressure.
 * Source: W. Bauer, Hydropneumatic Suspension Systems (constant area); Harris' Shock and Vibration Handbook, air
 * springs (the part of a changing area; from memory).
 */
function gasCurve(charge: GasCharge, by: EffectiveArea): Curve & { readonly fluid: FluidState } {
  const gas = polytropic(charge);
  const gauge = (s: number): number => gas.pressure(by.swept(s)) - ATMOSPHERE;
  return {
    force: (s) => gauge(s) * by.area(s),
    rate: (s) => gas.stiffness(by.swept(s)) * by.area(s) ** 2 + gauge(s) * by.slope(s),
    energy: (s) => gas.energy(by.swept(s)),
    constantRate: undefined,
    range: undefined,
    fluid: { gauge, used: (s) => by.swept(s) / gas.volume, ends: deflectionFor(by, gas.ends) },
  };
}

/** Where a volume is swept: the area is positive, so that there is one such place. */
const deflectionFor = (by: EffectiveArea, volume: number): number | undefined =>
  deflectionAt({ force: (s) => by.swept(s) / volume, rate: (s) => by.area(s) / volume }, 1);

/**
 * The same behind a gap: nothing inside it, then the rod's end is pressed against its contact until the charge is
 * met, and only then the rod moves.
 */
export function behindGap(curve: Curve, gap: number): Curve {
  const charge = curve.force(0);
  const width = charge / CONTACT;
  const stored = curve.energy(0);
  /** How far the rod is in, and how far its end has come into the contact. */
  const past = (s: number): number => s - gap - width;
  return {
    force: (s) => (s <= gap ? 0 : past(s) < 0 ? CONTACT * (s - gap) : curve.force(past(s))),
    rate: (s) => (s < gap ? 0 : past(s) < 0 ? CONTACT : curve.rate(past(s))),
    energy: (s) => {
      if (s <= gap) return 0;
      if (past(s) < 0) return (CONTACT * (s - gap) ** 2) / 2;
      return (charge * width) / 2 + curve.energy(past(s)) - stored;
    },
    constantRate: undefined,
    range:
      curve.range === undefined
        ? undefined
        : { from: curve.range.from + gap + width, to: curve.range.to + gap + width },
    marks: [{ at: gap, what: "free" }, ...(curve.marks ?? []).flatMap((mark) => behind(mark, gap + width))],
  };
}

/** Where a mark is met behind a gap; one that the rod never comes to is left out. */
const behind = (mark: Mark, moved: number): readonly Mark[] => (mark.at > 0 ? [{ ...mark, at: mark.at + moved }] : []);

/** The pressures behind a gap are those of a rod that does not move until its charge is met. */
function stateBehindGap(fluid: FluidState, gap: number, charge: number): FluidState {
  const rod = (s: number): number => Math.max(0, s - gap - charge / CONTACT);
  const { used, ends } = fluid;
  return {
    gauge: (s) => fluid.gauge(rod(s)),
    used: used && ((s) => used(rod(s))),
    ends: ends === undefined ? undefined : ends + gap + charge / CONTACT,
  };
}

/**
 * @param charge at its working temperature
 * @param gap from design until its rod is met, m; it then only pushes. Undefined where it is joined at both ends
 */
export function gasSpring(charge: GasCharge, by: EffectiveArea, gap: number | undefined): SpringLaw {
  const curve = gasCurve(charge, by);
  if (gap === undefined) return { kind: "spring", ...curve, stated: true };
  return {
    kind: "spring",
    ...behindGap(curve, gap),
    stated: true,
    fluid: stateBehindGap(curve.fluid, gap, curve.force(0)),
  };
}

/**
 * A force as it was measured against deflection from design, interpolated monotonically and straight on beyond.
 *
 * @param deflection strictly increasing, two or more
 * @param force N, as many; it may fall
 */
export function measuredGasCurve(deflection: readonly number[], force: readonly number[]): Curve {
  const through = monotone(deflection, force, "chord");
  const atDesign = through.integral(0);
  return {
    force: (s) => through.value(s),
    rate: (s) => through.slope(s),
    energy: (s) => through.integral(s) - atDesign,
    constantRate: undefined,
    range: { from: through.from, to: through.to },
    marks: [
      { at: through.from, what: "table-end" },
      { at: through.to, what: "table-end" },
    ],
  };
}

export const measuredGasSpring = (curve: Curve, gap: number | undefined): SpringLaw => ({
  kind: "spring",
  ...(gap === undefined ? curve : behindGap(curve, gap)),
  stated: true,
});
