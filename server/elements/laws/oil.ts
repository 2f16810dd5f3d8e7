/**
 * One enclosed volume of oil: its pressure against the volume that its cylinders push out.
 *
 * The oil gives by its own compressibility and into the gas of an accumulator; both stand at the same pressure, so
 * that what is pushed out is shared: q = x + C (p − p₀), p = p(x) of the gas.
 *
 * Units: m³, Pa above atmosphere, J. q is 0 and the pressure p₀ at design; the "force" of this law is the pressure.
 *
 * Invariant: continuous, never falls, the derivative of its energy; never below absolute nought, where oil parts.
 */
import type { SpringLaw } from "../element.js";
import { ATMOSPHERE, type GasBody } from "./polytropic.js";

export interface OilVolume {
  /** At design, above atmosphere. */
  readonly pressure: number;
  /** C = Σ V/B over its lines, m³/Pa; 0 where the oil is taken as incompressible. */
  readonly compliance: number;
  /** Of the accumulator, charged to that pressure; undefined without one. */
  readonly gas: GasBody | undefined;
}

const STEPS = 100;

/** x of x + C (p(x) − p₀) = q, which rises in x and lies between 0 and q. */
function intoGas(gas: GasBody, compliance: number, q: number): number {
  if (compliance === 0) return q;
  const rest = gas.pressure(0);
  let low = Math.min(0, q);
  let high = Math.max(0, q);
  let x = q;
  for (let i = 0; i < STEPS; i++) {
    const off = x + compliance * (gas.pressure(x) - rest) - q;
    if (off < 0) low = x;
    else high = x;
    const next = x - off / (1 + compliance * gas.stiffness(x));
    const step = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(step - x) <= Number.EPSILON * Math.abs(q)) return step;
    x = step;
  }
  return x;
}

function withGas({ pressure, compliance }: OilVolume, gas: GasBody): SpringLaw {
  const inGas = (q: number): number => intoGas(gas, compliance, q);
  const gauge = (x: number): number => gas.pressure(x) - ATMOSPHERE;
  return {
    kind: "spring",
    force: (q) => gauge(inGas(q)),
    rate: (q) => {
      const k = gas.stiffness(inGas(q));
      return k / (1 + compliance * k);
    },
    energy: (q) => {
      const x = inGas(q);
      return gas.energy(x) + (compliance * gauge(x) ** 2) / 2;
    },
    constantRate: undefined,
    range: undefined,
    stated: true,
    fluid: {
      gauge: (q) => gauge(inGas(q)),
      used: (q) => inGas(q) / gas.volume,
      ends: gas.ends + compliance * (gauge(gas.ends) - pressure),
    },
  };
}

/** p = p₀ + q/C down to absolute nought, and nought from there on. */
function oilAlone({ pressure, compliance }: OilVolume): SpringLaw {
  const parts = -(pressure + ATMOSPHERE) * compliance;
  const gauge = (q: number): number => (q < parts ? -ATMOSPHERE : pressure + q / compliance);
  return {
    kind: "spring",
    force: gauge,
    rate: (q) => (q < parts ? 0 : 1 / compliance),
    energy: (q) => {
      const p = gauge(q);
      return (compliance * p * p) / 2 + Math.max(0, parts - q) * ATMOSPHERE;
    },
    constantRate: undefined,
    range: undefined,
    stated: true,
    fluid: { gauge, used: undefined, ends: undefined },
  };
}

/**
 * dp/dq = 1/(1/k_gas + C), k_gas = n p/V. Source: W. Bauer, Hydropneumatic Suspension Systems (accumulator); bulk
 * modulus by its definition B = −V dp/dV.
 *
 * @returns undefined where nothing gives: incompressible oil without an accumulator holds its volume
 */
export function oilLaw(volume: OilVolume): SpringLaw | undefined {
  if (volume.gas !== undefined) return withGas(volume, volume.gas);
  return volume.compliance > 0 ? oilAlone(volume) : undefined;
}
