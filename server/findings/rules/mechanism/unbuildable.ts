/**
 * What is written cannot be a mechanism: a link too short to reach, ends that fall together, a law
 * whose dimensions contradict each other. Everything that does not rest on it is computed all the same.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup pinched from plover {
 *   front.corner-bar.torsion-bar.bore 14 mm
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup tube from plover {
 *   front.corner-bar.torsion-bar.bore 5 mm
 * }
 * ```
 */
import type { AssemblyProblem } from "../../../analyses/results.js";
import type { Origin } from "../../../model/origin.js";
import { axlesOf, type CheckedAxle } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "unbuildable",
  title: "What is written cannot be built",
  cost: "solved",
  severity: "error",
} as const;

export const unbuildable: Rule = { meta, check };

function* check(context: RuleContext): Generator<Finding> {
  const told = new Set<string>();
  for (const car of context.cars) {
    for (const checked of axlesOf(car)) {
      for (const problem of checked.analysis.problems) {
        if (standsInBase(car, (base) => has(base, problem))) continue;
        const { origin, element } = subjectOf(checked, problem);
        const place = placeFor(context, car, origin, element);
        if (place === undefined || told.has(`${place.start} ${problem.reason}`)) continue;
        told.add(`${place.start} ${problem.reason}`);
        yield findingOf(context, checked, problem, place);
      }
    }
  }
}

function has(car: CheckedCar, problem: AssemblyProblem): boolean {
  return axlesOf(car).some(({ analysis }) => analysis.problems.some((other) => keyOf(other) === keyOf(problem)));
}

const keyOf = (problem: AssemblyProblem): string =>
  `${problem.kind === "linkage" ? problem.side : problem.path} ${problem.reason}`;

function subjectOf(
  { axle }: CheckedAxle,
  problem: AssemblyProblem,
): { origin: Origin; element?: CheckedAxle["axle"]["elements"][number] } {
  if (problem.kind === "linkage") return { origin: axle.nameOrigin };
  const element = axle.elements.find(({ path }) => path === problem.path);
  return element === undefined ? { origin: axle.nameOrigin } : { origin: element.nameOrigin, element };
}

function findingOf(
  context: RuleContext,
  { axle }: CheckedAxle,
  problem: AssemblyProblem,
  place: { readonly start: number; readonly end: number },
): Finding {
  const element = problem.kind === "linkage" ? undefined : axle.elements.find(({ path }) => path === problem.path);
  const subject = element?.name ?? `The ${axle.name} linkage`;
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `${subject} cannot be computed: ${problem.reason}. Correct what is written; everything that does not rest on it is computed.`,
    related: [],
    tags: [],
    data: undefined,
  };
}
