/**
 * A closed body of gas: pressure against the volume that is swept out of it, p Vⁿ constant.
 *
 * Units: m³, Pa absolute, J. Swept volume positive where the gas is compressed, 0 at design.
 *
 * Where next to nothing of the gas is left, the curve goes on straight with the slope that it has there, so that it
 * stays finite and continuous; `ends` is where.
 *
 * Invariant: pressure rises with the swept volume and is its derivative of the work done on the gas; it is never negative.
 */

/** Standard atmosphere, Pa. Source: ISO 2533. */
export const ATMOSPHERE = 101325;

/** Share of the volume at design that is left where the curve ends: no seal or gas law is good beyond it. */
export const LEFT_OVER = 1 / 50;

export interface GasCharge {
  /** Absolute, at design, Pa. */
  readonly pressure: number;
  /** At design, m³. */
  readonly volume: number;
  /** Polytropic exponent n, 1 or more: 1 isothermal, 1.4 adiabatic for air and nitrogen. */
  readonly exponent: number;
}

export interface GasBody {
  /** Absolute pressure at a swept volume. */
  pressure(swept: number): number;
  /** dp/dv, Pa/m³. */
  stiffness(swept: number): number;
  /** Work that it can give back against the atmosphere, J: 0 where it stands at atmospheric pressure. */
  energy(swept: number): number;
  /** Swept volume at which the curve ends, m³. */
  readonly ends: number;
  readonly volume: number;
}

/** Absolute pressure of a charge that was read at one temperature and works at another, its volume the same: p T′/T (kelvin). */
export const heated = (pressure: number, charged: number, working: number): number => (pressure * working) / charged;

/**
 * p = p₀ (V₀/(V₀ − v))ⁿ, dp/dv = n p/(V₀ − v), ∫p dv = p₀V₀ ((V₀/(V₀ − v))ⁿ⁻¹ − 1)/(n − 1), with n = 1 as its limit.
 * Source: W. Bauer, Hydropneumatic Suspension Systems; any text on thermodynamics.
 */
export function polytropic({ pressure, volume, exponent }: GasCharge): GasBody {
  const ends = volume * (1 - LEFT_OVER);
  /** ln(V₀/V) */
  const compression = (swept: number): number => -Math.log1p(-swept / volume);
  const at = (swept: number): number => pressure * Math.exp(exponent * compression(swept));
  const slope = (swept: number): number => (exponent * at(swept)) / (volume - swept);
  const work = (swept: number): number => {
    const ln = compression(swept);
    const n1 = exponent - 1;
    return pressure * volume * (n1 === 0 ? ln : Math.expm1(n1 * ln) / n1);
  };
  const last = at(ends);
  const lastSlope = slope(ends);
  const lastWork = work(ends);
  /** Work on the gas less what the atmosphere does. */
  const available = (swept: number): number => {
    const beyond = swept - ends;
    if (beyond <= 0) return work(swept) - ATMOSPHERE * swept;
    return lastWork + beyond * (last + (lastSlope * beyond) / 2) - ATMOSPHERE * swept;
  };
  const relaxed = volume * (1 - (pressure / ATMOSPHERE) ** (1 / exponent));
  const least = available(relaxed);
  return {
    ends,
    volume,
    pressure: (swept) => (swept <= ends ? at(swept) : last + lastSlope * (swept - ends)),
    stiffness: (swept) => (swept <= ends ? slope(swept) : lastSlope),
    energy: (swept) => available(swept) - least,
  };
}
