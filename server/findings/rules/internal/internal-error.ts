/**
 * Bellcrank itself failed while it was checking this file. The other checks have run, and their
 * findings stand; the one that is named in the message has not said anything about this file.
 *
 * This is never your mistake, whatever the text is. Please report it with the message and, if you
 * can, the file.
 */
import type { RuleContext } from "../../context.js";
import type { Finding } from "../../finding.js";

export const internalErrorMeta = {
  id: "internal-error",
  title: "A check failed to run",
} as const;

/** The finding that stands for a rule that threw; at the head of the file, since it has no place of its own. */
export function internalError(rule: string, context: RuleContext, error: unknown): Finding {
  const detail = error instanceof Error ? error.message : String(error);
  return {
    rule: internalErrorMeta.id,
    severity: "error",
    uri: context.uri,
    span: { start: 0, end: Math.min(1, context.text.length) },
    message: `The check "${rule}" failed: ${detail}. All other checks have run; please report this one.`,
    related: [],
    tags: [],
    data: { rule, stack: error instanceof Error ? error.stack : undefined },
  };
}
