/** Whether a hover offers to tell more of a value: where it comes from, and which set-ups change it. */
import type { FileView } from "../../snapshot/workspace.js";
import { askedAt } from "./asked.js";
import { chainOfAsked } from "./chain-of-asked.js";
import type { FileOf } from "./written.js";

export interface HoverLinks {
  /** More than one line has a say in it. */
  readonly hasChain: boolean;
  /** It belongs to a car, or to a part that cars may have. */
  readonly mayBeChanged: boolean;
}

export function hoverLinks(file: FileView, offset: number, fileOf: FileOf): HoverLinks {
  const asked = askedAt(file, offset);
  if (asked.kind === "none") return { hasChain: false, mayBeChanged: false };
  // Of a whole car or set-up the values are chosen from.
  if (asked.kind === "block") return { hasChain: asked.path.length === 0, mayBeChanged: false };
  const chain = chainOfAsked(asked, fileOf);
  return {
    hasChain: (chain?.steps.length ?? 0) > 1,
    mayBeChanged: chain !== undefined && (asked.kind !== "line" || asked.of === "part"),
  };
}
