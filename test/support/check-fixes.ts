/** Applies a rule's fix the way an editor does, and checks again. */
import type { RuleContext } from "../../server/findings/context.js";
import type { Finding, Fix } from "../../server/findings/finding.js";
import { fixesOf, runRules } from "../../server/findings/run.js";

export interface AfterFix {
  readonly text: string;
  readonly context: RuleContext;
  readonly findings: readonly Finding[];
  readonly fix: Fix;
}

export function fixesFor(context: RuleContext, rule: string): readonly Fix[] {
  const finding = runRules(context).find((one) => one.rule === rule);
  if (finding === undefined) throw new Error(`no ${rule} to fix`);
  return fixesOf(finding, context);
}

/** @param title part of the fix's title; without it the preferred fix is taken. */
export function afterFix(context: RuleContext, rule: string, title?: string): AfterFix {
  const fixes = fixesFor(context, rule);
  const fix = fixes.find((one) => (title === undefined ? one.preferred : one.title.includes(title)));
  if (fix === undefined) throw new Error(`no such fix of ${rule} among: ${fixes.map((one) => one.title).join("; ")}`);
  const edits = fix.edits.map(({ uri, span, newText }) => ({ uri, start: span.start, end: span.end, newText }));
  const after = context.retry(edits);
  return { text: after.text, context: after, findings: runRules(after), fix };
}
