/** What a spring does where it would have to pull: how much that is, and the line that says it. */
import type { Fix, TextEdit } from "../finding.js";
import { insertionInto } from "../insertion.js";
import { isInside, lineAdded } from "../setup-lines.js";
import { blockAt } from "../tree.js";
import { pathTo } from "./line-edits.js";
import { clearedBy, type Mending } from "./proof.js";

/** The largest pull over the travel, N, where its rate is the same everywhere; 0 where that is not known. */
export function pullOf({ element: { figures } }: Mending): number {
  const { staticLoad, rate, travel, deflection } = figures;
  if (typeof staticLoad !== "number" || typeof rate !== "number" || typeof deflection !== "number") return 0;
  return "kind" in travel ? 0 : Math.max(0, rate * (deflection - travel.from) - staticLoad);
}

export function sayHow(mending: Mending, acts: "in-compression" | "both-ways", title: string): readonly Fix[] {
  const edit = actsLine(mending, acts);
  if (edit === undefined || clearedBy(mending, { edits: [edit] }) === undefined) return [];
  return [{ title: `${title}: acts ${acts}`, edits: [edit], preferred: false, safe: false }];
}

/** In the element's own block where that stands in this car, else as a line of the set-up. */
function actsLine(mending: Mending, acts: string): TextEdit | undefined {
  const { context, car, element } = mending;
  const { nameOrigin, origin, axle } = element.model;
  if (axle === undefined) return undefined;
  if (!isInside(nameOrigin, car.model.origin))
    return lineAdded(context, car.model, axle, `${pathTo(mending, "acts")} ${acts}`);
  const block = blockAt(context.parsed.document, { start: origin.end - 1, end: origin.end });
  return block && { uri: context.uri, ...insertionInto(context.text, block, `acts ${acts}`, BEFORE) };
}

/** What usually stands before it. */
const BEFORE: ReadonlySet<string> = new Set(["rate", "coil", "curve", "tender", "preload", "fit"]);
