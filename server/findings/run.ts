/**
 * Runs the rules over one file, cheap ones first, and asks a rule for the fixes of its finding.
 *
 * Invariant: a rule that throws takes nothing else down; its failure is itself a finding, so it
 * can never pass for "nothing to say".
 */
import type { RuleContext } from "./context.js";
import type { Cost, Finding, Fix, Rule, TextEdit } from "./finding.js";
import { fittingEdits } from "./edits.js";
import { rules } from "./registry.js";
import { internalError } from "./rules/internal/internal-error.js";

export { applyEdits } from "./edits.js";

const cheapFirst: readonly Cost[] = ["syntax", "model", "solved"];

/** The findings of the file, in the order of the text. `costs` limits the run to the rules of these costs. */
export function runRules(
  context: RuleContext,
  costs: readonly Cost[] = cheapFirst,
  from: readonly Rule[] = rules,
): Finding[] {
  const found: Finding[] = [];
  for (const cost of cheapFirst) {
    if (!costs.includes(cost)) continue;
    for (const rule of from) if (rule.meta.cost === cost) found.push(...guarded(rule, context));
  }
  return found.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
}

function guarded(rule: Rule, context: RuleContext): readonly Finding[] {
  try {
    return [...rule.check(context)];
  } catch (error) {
    return [internalError(rule.meta.id, context, error)];
  }
}

/** What would mend the finding. None where the rule knows of nothing, or its own computing failed. */
export function fixesOf(finding: Finding, context: RuleContext, from: readonly Rule[] = rules): Fix[] {
  const rule = from.find((one) => one.meta.id === finding.rule);
  return rule?.fix ? [...rule.fix(finding, context)] : [];
}

/** The edits that `source.fixAll` makes: of each finding the best safe fix, as far as they fit together. */
export function safeEdits(
  findings: readonly Finding[],
  context: RuleContext,
  from: readonly Rule[] = rules,
): readonly TextEdit[] {
  const fixes = findings.map((finding) => {
    const safe = fixesOf(finding, context, from).filter((fix) => fix.safe);
    return safe.find((fix) => fix.preferred) ?? safe[0];
  });
  return fittingEdits(fixes.filter((fix) => fix !== undefined));
}
