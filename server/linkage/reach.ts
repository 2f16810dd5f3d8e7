/**
 * How far a corner goes between two travels, and how near its links come to a toggle on the way.
 *
 * In: a mechanism with its limits; out: `Reach`, toggles as transmission angles (`transmission.ts`).
 */
import type { BindingLink, Reach, Unreachable } from "./corner.js";
import type { Mechanism } from "./mechanism.js";
import { PLACED, Pose, type Status } from "./position.js";
import { placeAt } from "./solve-travel.js";
import { type Transmissions, transmissions } from "./transmission.js";
import { linkOf, type TravelLimit, type TravelLimits } from "./travel-limits.js";

/** Positions looked at between two travels; the smallest is then closed in on. */
const SAMPLES = 33;
const SHRINKS = 40;
const GOLDEN = 0.6180339887498949;

const unreachable = (end: TravelLimit, travel: number): Unreachable => ({
  kind: "unreachable",
  link: end.link,
  travel,
  limit: end.travel,
});

/** Why a travel is out of reach; undefined where it is within. A travel that is no number counts as too far up. */
export const outOfReach = (limits: TravelLimits, travel: number): Unreachable | undefined => {
  if (travel < limits.low.travel) return unreachable(limits.low, travel);
  return travel <= limits.high.travel ? undefined : unreachable(limits.high, travel);
};

const rodOf = (m: Mechanism): BindingLink => m.skeleton.geometry.rod?.kind ?? "push-rod";

/**
 * The last travel before one at which a link fails although it lies between the limits: a gap in the branch so narrow
 * that the march of `travel-limits.ts` went over it.
 */
export function bindsBefore(m: Mechanism, travel: number, status: Status): Unreachable {
  const p = new Pose();
  let [good, bad, last] = [0, travel, status];
  for (let middle = 0.5 * travel; middle !== good && middle !== bad; middle = 0.5 * (good + bad)) {
    const found = placeAt(m.branch, p, middle);
    if (found === PLACED) good = middle;
    else [bad, last] = [middle, found];
  }
  return { kind: "unreachable", link: linkOf(last, rodOf(m)), travel, limit: good };
}

type Sines = readonly (readonly [BindingLink, number])[];

const named = (m: Mechanism, sines: Transmissions): Sines => {
  const all: readonly (readonly [BindingLink, number | undefined])[] = [
    ["lower-wishbone", sines.lower],
    ["upper-wishbone", sines.upper],
    ["track-rod", sines.trackRod],
    [rodOf(m), sines.rod],
  ];
  return all.flatMap(([link, sine]) => (sine === undefined ? [] : [[link, sine] as const]));
};

function sinesAt(m: Mechanism, p: Pose, travel: number): Sines {
  return placeAt(m.branch, p, travel) === PLACED ? named(m, transmissions(m.branch.constants, p)) : [];
}

/** Smallest value of `sine` between a and b, by golden section from a bracket of one sampling step each way. */
function closeIn(sine: (travel: number) => number, from: number, to: number): { travel: number; sine: number } {
  let [a, b] = [from, to];
  let left = { travel: b - GOLDEN * (b - a), sine: sine(b - GOLDEN * (b - a)) };
  let right = { travel: a + GOLDEN * (b - a), sine: sine(a + GOLDEN * (b - a)) };
  for (let i = 0; i < SHRINKS; i++) {
    if (left.sine < right.sine) {
      b = right.travel;
      right = left;
      left = { travel: b - GOLDEN * (b - a), sine: sine(b - GOLDEN * (b - a)) };
    } else {
      a = left.travel;
      left = right;
      right = { travel: a + GOLDEN * (b - a), sine: sine(a + GOLDEN * (b - a)) };
    }
  }
  return left.sine < right.sine ? left : right;
}

function smallestOf(m: Mechanism, p: Pose, samples: readonly { travel: number; sines: Sines }[], link: BindingLink) {
  const sineOf = (sines: Sines): number => sines.find(([name]) => name === link)?.[1] ?? 1;
  let least = 0;
  samples.forEach((sample, i) => {
    if (sineOf(sample.sines) < sineOf(samples[least]?.sines ?? [])) least = i;
  });
  const at = samples[least]?.travel ?? 0;
  const found = { travel: at, sine: sineOf(samples[least]?.sines ?? []) };
  const inner = least > 0 && least < samples.length - 1;
  const closed = inner
    ? closeIn((z) => sineOf(sinesAt(m, p, z)), samples[least - 1]?.travel ?? at, samples[least + 1]?.travel ?? at)
    : found;
  const best = closed.sine < found.sine ? closed : found;
  return { link, travel: best.travel, angle: Math.asin(Math.min(1, best.sine)) };
}

/** Reach from one travel to another, m. Toggles are looked for on the reachable part of the way. */
export function reachOf(m: Mechanism, from: number, to: number): Reach {
  const bound = { low: outOfReach(m.branch.limits, from), high: outOfReach(m.branch.limits, to) };
  const low = bound.low?.limit ?? from;
  const high = bound.high?.limit ?? to;
  const p = new Pose();
  const samples = Array.from({ length: SAMPLES }, (_, i) => {
    const travel = low + ((high - low) * i) / (SAMPLES - 1);
    return { travel, sines: sinesAt(m, p, travel) };
  });
  const links = samples[0]?.sines.map(([link]) => link) ?? [];
  return { from, to, bound, toggles: links.map((link) => smallestOf(m, p, samples, link)) };
}
