/** What an actuator holds, from its block: one setting for all cases, or a row a case. */
import type { Held, HoldLaw, SpringLaw } from "../elements/element.js";
import { constantForce } from "../elements/laws/constant-force.js";
import type { ResolvedBlock, ResolvedValue } from "../model/car.js";
import { type Lawless, lawless, mismatch } from "./lawless.js";
import { quantityOf, statementOf } from "./reading.js";

function heldBy(value: ResolvedValue | undefined): Held | undefined {
  if (value?.kind !== "number") return undefined;
  return { kind: value.dimension === "force" ? "force" : "length", value: value.value };
}

/** The last row of a case is the one that holds; that it is given twice is the model's to tell. */
function casesOf(block: ResolvedBlock | undefined): ReadonlyMap<string, Held> {
  const cases = new Map<string, Held>();
  for (const { key, value } of block?.rows ?? []) {
    const held = heldBy(value);
    if (key.kind === "path" && held !== undefined) cases.set(key.segments.join("."), held);
  }
  return cases;
}

/**
 * A force for all cases is a law like a spring's without a rate; everything else is looked up by the case.
 *
 * @param torsional of the connection; undefined where there is none
 */
export function actuatorLaw(block: ResolvedBlock, torsional: boolean | undefined): HoldLaw | SpringLaw | Lawless {
  const wrong = mismatch("hold", false, torsional);
  if (wrong !== undefined) return wrong;
  const hold = statementOf(block, "hold");
  if (hold === undefined) return lawless("it has nothing to hold");
  const stated = quantityOf(block, "hold");
  if (stated === undefined) return { kind: "hold", always: undefined, cases: casesOf(hold.block) };
  if (stated.dimension === "force") return constantForce(stated.value);
  return { kind: "hold", always: { kind: "length", value: stated.value }, cases: new Map() };
}
