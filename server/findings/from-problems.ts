/**
 * Most rules put into words one kind of problem that the grammar or the resolver found. These
 * helpers do the walking, so that a rule file holds only its words and its fix.
 *
 * In: the context and the kinds that a rule speaks for. Out: its findings, each with the problem in `data`.
 */
import type { Span, SyntaxProblem } from "../../grammar/index.js";
import type { ModelProblem } from "../model/problem.js";
import type { RuleContext } from "./context.js";
import type { Finding, Rule } from "./finding.js";

export type SyntaxProblemOf<K extends SyntaxProblem["kind"]> = Extract<SyntaxProblem, { readonly kind: K }>;
export type ModelProblemOf<K extends ModelProblem["kind"]> = Extract<ModelProblem, { readonly kind: K }>;

/** What a rule adds to a problem to make it a finding; the rest has defaults. */
export interface Wording {
  readonly message: string;
  readonly severity?: Finding["severity"];
  readonly span?: Span;
  readonly related?: Finding["related"];
  readonly tags?: Finding["tags"];
}

/** `say` may decline a problem that another finding already explains. */
export function* fromSyntax<K extends SyntaxProblem["kind"]>(
  meta: Rule["meta"],
  context: RuleContext,
  kinds: readonly K[],
  say: (problem: SyntaxProblemOf<K>) => Wording | undefined,
): Generator<Finding> {
  for (const problem of context.parsed.problems) {
    if (!isOf(problem, kinds)) continue;
    const wording = say(problem as SyntaxProblemOf<K>);
    if (wording) yield findingFrom(meta, context.uri, problem, wording);
  }
}

export function* fromModel<K extends ModelProblem["kind"]>(
  meta: Rule["meta"],
  context: RuleContext,
  kinds: readonly K[],
  say: (problem: ModelProblemOf<K>) => Wording | undefined,
): Generator<Finding> {
  for (const problem of context.problems) {
    if (!isOf(problem, kinds)) continue;
    const wording = say(problem as ModelProblemOf<K>);
    if (wording) yield findingFrom(meta, problem.uri, problem, wording);
  }
}

/** The problem behind a finding of `fromSyntax` or `fromModel`, for the rule's own fix. */
export function problemBehind<K extends SyntaxProblem["kind"] | ModelProblem["kind"]>(
  finding: Finding,
  kind: K,
): Extract<SyntaxProblem | ModelProblem, { readonly kind: K }> | undefined {
  const data = finding.data;
  if (typeof data !== "object" || data === null || !("kind" in data) || data.kind !== kind) return undefined;
  return data as Extract<SyntaxProblem | ModelProblem, { readonly kind: K }>;
}

function isOf(problem: { readonly kind: string }, kinds: readonly string[]): boolean {
  return kinds.includes(problem.kind);
}

function findingFrom(meta: Rule["meta"], uri: string, problem: Span, wording: Wording): Finding {
  const span = wording.span ?? problem;
  return {
    rule: meta.id,
    severity: wording.severity ?? meta.severity,
    uri,
    span: { start: span.start, end: span.end },
    message: wording.message,
    related: wording.related ?? [],
    tags: wording.tags ?? [],
    data: problem,
  };
}
