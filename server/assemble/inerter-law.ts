/** The law of an inerter from its block: two-point ones in kg, rotary ones in kg·m². */
import type { InerterLaw } from "../elements/element.js";
import type { ResolvedBlock } from "../model/car.js";
import { isTorsional, type Lawless, lawless, mismatch } from "./lawless.js";
import { quantityOf } from "./reading.js";

/** @param torsional of the connection; undefined where there is none */
export function inerterLaw(block: ResolvedBlock, torsional: boolean | undefined): InerterLaw | Lawless {
  const stated = quantityOf(block, "inertance");
  if (stated === undefined) return lawless("it has no inertance");
  const wrong = mismatch("inertance", isTorsional(stated.dimension), torsional);
  return wrong ?? { kind: "inerter", inertance: stated.value };
}
