/**
 * Deflections at which something happens to an element: its law goes over into another, a coil binds, a stress or a
 * stroke is used up. A step that its curves share.
 *
 * Deflections from design, the seat of the trim taken off.
 */
import type { Element, SpringLaw } from "../elements/element.js";
import { deflectionAt } from "../elements/laws/inverse.js";
import type { Strength } from "../elements/strength.js";
import type { MarkKind } from "./curve-data.js";
import type { StressFigures } from "./results.js";

export interface Place {
  readonly what: MarkKind;
  readonly s: number;
  /** Whether the law has a kink there. */
  readonly isKink: boolean;
}

const OF_LAW = { free: "carries", stage: "stage", "table-end": "table-end" } as const;

function loadsAt(law: SpringLaw, what: MarkKind, loads: readonly number[]): readonly Place[] {
  return loads.flatMap((load) => {
    const s = Number.isFinite(load) ? deflectionAt(law, load) : undefined;
    return s === undefined ? [] : [{ what, s, isKink: false }];
  });
}

/** A law that begins to carry somewhere says so itself. */
const begins = (law: SpringLaw): boolean => law.marks?.some(({ what }) => what === "free") === true;

function ofLaw(law: SpringLaw): readonly Place[] {
  const marks = (law.marks ?? []).map(({ at, what }) => ({ what: OF_LAW[what], s: at, isKink: true }));
  const ends = law.fluid?.ends;
  const gas = ends === undefined ? [] : [{ what: "gas-end" as const, s: ends, isKink: true }];
  const none = begins(law) || law.fluid !== undefined || law.constantRate === 0 ? [] : loadsAt(law, "no-load", [0]);
  return [...marks, ...gas, ...none];
}

/** Loads at which a coil is closed up, and at which a part bears all that it may. */
function ofLoad(law: SpringLaw, { parts, coil }: Strength, stresses: readonly StressFigures[]): readonly Place[] {
  const bind = coil === undefined ? [] : loadsAt(law, "bind", [(coil.free - coil.solid) * coil.rate]);
  const limits = parts.map(({ name, allowable, perLoad }) => {
    const told = stresses.find(({ part }) => part === name);
    return (told?.allowable ?? allowable.stated ?? allowable.oneWay) / perLoad;
  });
  const least = Math.min(...limits);
  return [...bind, ...loadsAt(law, "stress", [least, -least])];
}

/**
 * @param seat what the trim adds to its deflection
 * @param stresses as they were worked out, with what each part may bear as it is worked
 */
export function placesOf(
  { law, strength }: Pick<Element, "law" | "strength">,
  seat: number,
  stresses: readonly StressFigures[],
): readonly Place[] {
  const stroke = strength?.stroke;
  const ends = stroke === undefined ? [] : [stroke.from, stroke.to];
  const strokes = ends.filter(Number.isFinite).map((s) => ({ what: "stroke-end" as const, s, isKink: false }));
  if (law?.kind !== "spring") return strokes;
  const loads = strength === undefined ? [] : ofLoad(law, strength, stresses);
  const own = [...ofLaw(law), ...loads].map((place) => ({ ...place, s: place.s - seat }));
  return [...own, ...strokes].sort((a, b) => a.s - b.s);
}
