/** The checks in brief, for a face that lists them: what each is called, and how grave it is. */
import type { Rule } from "../findings/finding.js";
import { rules } from "../findings/registry.js";

export const rulesInBrief: readonly Rule["meta"][] = rules.map(({ meta }) => meta);
