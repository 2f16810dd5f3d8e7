/**
 * Something rests on itself: a file uses a file that uses it again, a set-up derives from one that
 * derives from it, a `let` value is computed from itself. There is nothing to begin with, so
 * nothing in the circle has a value. It is an error at each of its members.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from standing-water {
 *   front.third.rate 95 N/mm
 * }
 *
 * setup standing-water from wet {
 *   front.ride-height by +2 mm
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.third.rate 95 N/mm
 * }
 *
 * setup standing-water from wet {
 *   front.ride-height by +2 mm
 * }
 * ```
 */
import { fromModel, type ModelProblemOf } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { quoted } from "../../wording.js";

const meta = {
  id: "cycle",
  title: "A circle of things that rest on each other",
  cost: "model",
  severity: "error",
} as const;

export const cycle: Rule = {
  meta,
  check: (context) => fromModel(meta, context, ["cycle"], (problem) => ({ message: messageFor(problem) })),
};

const relations = { use: "uses", from: "derives from", let: "is computed from" } as const;

function messageFor(problem: ModelProblemOf<"cycle">): string {
  return `This goes round in a circle: ${roundTrip(problem)}. Nothing in it has a value; take one step of it out.`;
}

/** `a uses b, b uses a`: long circles keep their beginning and their end. */
function roundTrip({ what, path }: ModelProblemOf<"cycle">): string {
  const names = path.length > 1 && path[0] === path.at(-1) ? path.slice(0, -1) : path;
  const steps = names.map(
    (name, index) => `${quoted(last(name))} ${relations[what]} ${quoted(last(names[index + 1] ?? names[0] ?? name))}`,
  );
  return steps.length <= 4 ? steps.join(", ") : [...steps.slice(0, 2), "…", ...steps.slice(-1)].join(", ");
}

/** Of an address the file's name; other names are whole. */
function last(name: string): string {
  return name.slice(name.lastIndexOf("/") + 1) || name;
}
