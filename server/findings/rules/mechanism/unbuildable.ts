/**
 * What is written cannot be a mechanism: a link too short to reach, ends that fall together, a law
 * whose dimensions contradict each other, a clicker beyond its last click. Everything that does not rest on it is computed
 * all the same.
 *
 * The cross arm of a T-shaped bar takes its drop links only: each of its ends is moved by both wheels, in the stem's swing
 * and in its twist at once, so that what hung on one would have no single wheel to follow. Join it to the rocker instead.
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
import type { AxleModel, ElementModel } from "../../../model/car.js";
import type { Origin } from "../../../model/origin.js";
import { axlesOf } from "../../axle-parts.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { lineIn } from "../../strength/faulty.js";
import { contains, statementAt } from "../../tree.js";
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
    for (const part of partsOf(car)) {
      for (const problem of part.problems) {
        if (standsInBase(car, (base) => has(base, part, problem))) continue;
        const finding = findingOf(context, car, part, problem);
        if (isToldAlready(context, finding)) continue;
        // Left and right of what is written once have one and the same fault.
        const key = `${finding.span.start} ${finding.message}`;
        if (told.has(key)) continue;
        told.add(key);
        yield finding;
      }
    }
  }
}

/** A value of the same line or block that cannot be (ends that fall together): one mistake, one finding. */
function isToldAlready({ parsed, problems, uri }: RuleContext, finding: Finding): boolean {
  const impossible = problems.filter((problem) => problem.kind === "range-violated" && problem.uri === uri);
  const statement = impossible.length === 0 ? undefined : statementAt(parsed.document, finding.span);
  return statement !== undefined && impossible.some((problem) => contains(statement, problem));
}

/** An axle, or what stands between the axles. */
interface Part {
  readonly axle: AxleModel | undefined;
  readonly elements: readonly ElementModel[];
  readonly problems: readonly AssemblyProblem[];
}

const partsOf = (car: CheckedCar): readonly Part[] => [
  ...axlesOf(car).map(({ axle, analysis }) => ({ axle, elements: axle.elements, problems: analysis.problems })),
  { axle: undefined, elements: car.model.elements, problems: car.analysis.problems },
];

function has(car: CheckedCar, { axle }: Part, problem: AssemblyProblem): boolean {
  return partsOf(car).some(
    (other) => other.axle?.name === axle?.name && other.problems.some((one) => keyOf(one) === keyOf(problem)),
  );
}

const keyOf = (problem: AssemblyProblem): string =>
  `${problem.kind === "linkage" ? problem.side : problem.path} ${problem.reason}`;

function findingOf(context: RuleContext, car: CheckedCar, part: Part, problem: AssemblyProblem): Finding {
  const { axle, elements } = part;
  const element = problem.kind === "linkage" ? undefined : elements.find(({ path }) => path === problem.path);
  const places = element === undefined ? axle && linkagePlaces(axle, problem.reason) : placesOf(element, problem);
  const place = placeFor(context, car, { places: places ?? [], element, axle: axle?.name });
  return {
    rule: meta.id,
    severity: meta.severity,
    uri: context.uri,
    span: { start: place.start, end: place.end },
    message: `${element?.name ?? `The ${axle?.name ?? "car's"} linkage`} cannot be computed: ${problem.reason}. Correct what is written; everything that does not rest on it is computed.`,
    related: [],
    tags: [],
    data: undefined,
  };
}

/** The line that is to blame where it is known, a part from the shelf where it is fitted, else the element. */
function placesOf({ block, part, nameOrigin, connection }: ElementModel, problem: AssemblyProblem): readonly Origin[] {
  const blamed = problem.kind === "law" ? (problem.lines ?? []) : [];
  const values = blamed.flatMap((line) => lineIn(block, line)?.origin ?? []);
  const fitted = part === undefined || blamed.length === 0 ? [] : [part.origin];
  return [...values, ...fitted, nameOrigin, ...(connection === undefined ? [] : [connection.origin])];
}

/** The part that the reason names (the longest such word: `upper-wishbone`), else the axle. */
function linkagePlaces(axle: AxleModel, reason: string): readonly Origin[] {
  const linkage = axle.block.statements.find(({ word }) => word === "linkage");
  const named = (linkage?.block?.statements ?? []).filter(({ word }) => reason.includes(word));
  const [part] = named.sort((a, b) => b.word.length - a.word.length);
  return part === undefined ? [axle.nameOrigin] : [part.wordOrigin, axle.nameOrigin];
}
