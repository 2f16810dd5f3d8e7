/** Steps of a chain and changes of set-ups as they are told: one wording for the editor and the command line. */
import type { Changer } from "./changers.js";
import type { ValueChain } from "./chain.js";
import type { Step } from "./steps.js";

/** "front.third.rate of quarrow-wet: 45 N/mm" */
export function chainTitle({ path, of, value }: ValueChain): string {
  const subject = of === undefined ? path : `${path} of ${of}`;
  return value === undefined ? subject : `${subject}: ${value}`;
}

/** What a step is told by: what it comes to, else its line. */
export const stepLabel = ({ kind, value, text }: Step): string => (kind === "removed" ? "taken out" : (value ?? text));

const roles: Readonly<Record<Step["kind"], string>> = {
  written: "",
  replaced: "",
  adjusted: "",
  fitted: "fits the part",
  part: "",
  removed: "",
  follows: "follows what it reads",
  let: "",
  reads: "read by the line above",
  default: "when nothing is written",
};

/** "set-up quarrow-wet", "car quill, fits the part" */
export function stepBy({ kind, by }: Step): string {
  const role = roles[kind];
  return role === "" ? by : `${by}, ${role}`;
}

/** "55 N/mm → 45 N/mm (-10 N/mm, -18.2 %)" */
export function changeLabel({ before, now, difference }: Changer): string {
  if (now === undefined) return before === undefined ? "taken out" : `taken out (${before})`;
  const change = before === undefined ? `${now}, not there before` : `${before} → ${now}`;
  return difference === undefined ? change : `${change} (${difference})`;
}
