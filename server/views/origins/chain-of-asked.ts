/** The chain of whatever the cursor is on, once it is one value: of a car's property, of a part's figure, of a `let`, of one line among several. */
import { amongChain } from "./among.js";
import type { Asked } from "./asked.js";
import { letsBehind } from "./behind.js";
import { chainOf, type ValueChain } from "./chain.js";
import type { Step } from "./steps.js";
import { type FileOf, writtenAt } from "./written.js";

/** Of a line that belongs to no car: itself, and the `let`s that it names. */
function lineChain({ of, origin }: Extract<Asked, { kind: "line" }>, fileOf: FileOf): ValueChain | undefined {
  const written = writtenAt(origin, fileOf);
  if (written === undefined) return undefined;
  const step: Step = { ...written, kind: of === "let" ? "let" : "part", value: undefined };
  return {
    of: undefined,
    path: of === "let" ? (written.text.split("=")[0]?.trim() ?? "") : written.by,
    value: undefined,
    steps: [step, ...letsBehind(origin, fileOf)],
  };
}

/** Of whatever the cursor is on, once it is one value. */
export function chainOfAsked(asked: Exclude<Asked, { kind: "none" }>, fileOf: FileOf): ValueChain | undefined {
  if (asked.kind === "line") return lineChain(asked, fileOf);
  if (asked.kind === "among") return amongChain(asked.car, asked.origin, fileOf);
  return chainOf(asked.car, asked.path, fileOf);
}
