/**
 * The left and the right side of an axle are not mirror images: a point, a wheel or a corner element
 * differs. A car may be meant so; then this line is a reminder. More often one side was changed and the
 * other forgotten.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup lopsided from plover {
 *   front.left.side.damping 2.9 N*s/mm
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup even from plover {
 *   front.side.damping 2.9 N*s/mm
 * }
 * ```
 */
import type { RuleContext } from "../../context.js";
import { oneEdit, removal } from "../../edits.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { type Difference, differencesOf } from "../../side-differences.js";
import { statementAt } from "../../tree.js";
import { standsInBase } from "../../where.js";

const meta = {
  id: "asymmetry",
  title: "Left and right differ",
  cost: "model",
  severity: "information",
} as const;

export const asymmetry: Rule = { meta, check, fix };

function* check(context: RuleContext): Generator<Finding> {
  const told = new Set<number>();
  for (const car of context.cars) {
    for (const difference of differencesOf(car.model)) {
      const { origin } = difference;
      if (
        standsInBase(car, (base) =>
          differencesOf(base.model).some(
            (other) => other.origin.start === origin.start && other.origin.uri === origin.uri,
          ),
        )
      )
        continue;
      if (origin.uri !== context.uri || told.has(origin.start)) continue;
      told.add(origin.start);
      yield findingOf(context, difference);
    }
  }
}

function findingOf(context: RuleContext, difference: Difference): Finding {
  const { origin, other } = difference;
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: origin.start, end: origin.end },
    message: `${difference.what} is ${difference.left} on the left and ${difference.right} on the right. If that is not meant, give both sides the same.`,
    related: other === undefined ? [] : [{ origin: other, message: "The other side comes from here" }],
    tags: [],
    data: difference,
  };
}

/** Takes the one-sided line out, so that the side mirrors the other again. */
function fix(finding: Finding, context: RuleContext): readonly Fix[] {
  const line = statementAt(context.parsed.document, finding.span);
  if (line === undefined) return [];
  return [
    oneEdit("Mirror the other side: remove this line", finding.uri, removal(context.text, line), "", {
      preferred: true,
    }),
  ];
}
