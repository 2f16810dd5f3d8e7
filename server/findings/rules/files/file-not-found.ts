/**
 * A file that this one uses cannot be read: it is not there, it is not text, or its path leaves
 * the folder that was opened. Paths are relative to the file they stand in and use forward slashes.
 *
 * Names from that file are unknown here until it is found.
 *
 * ```crank wrong
 * use "shared.crank"
 * use "dampers.crank"
 *
 * setup wet from wren {
 *   front.third.rate 95 N/mm
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   front.third.rate 95 N/mm
 * }
 * ```
 */
import { fromModel, type ModelProblemOf } from "../../from-problems.js";
import type { Rule } from "../../finding.js";
import { quoted } from "../../wording.js";

const meta = { id: "file-not-found", title: "A file that cannot be read", cost: "model", severity: "error" } as const;

export const fileNotFound: Rule = {
  meta,
  check: (context) => fromModel(meta, context, ["file-not-found"], (problem) => ({ message: messageFor(problem) })),
};

function messageFor({ path, reason }: ModelProblemOf<"file-not-found">): string {
  switch (reason) {
    case "missing":
      return `There is no file ${quoted(path)} beside this one, so what it declares is unknown here. Correct the path: it is relative to this file.`;
    case "outside":
      return `${quoted(path)} lies outside the folder that is open, and files there are not read. Move it inside, or open the folder above.`;
    case "not-text":
      return `${quoted(path)} is not UTF-8 text, so nothing is read from it. Save it as UTF-8, or name another file.`;
    case "not-a-path":
      return `${quoted(path)} is not a path that can be followed. Write one relative to this file with forward slashes, such as "parts.crank".`;
  }
}
