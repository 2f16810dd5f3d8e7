/**
 * A load case is written, but something that it takes is not: brakes where it brakes, a drive where it holds its speed
 * against drag, the rack where the steering wheel is turned, the height of the centre of gravity. Nothing of the case is
 * then computed, and what is expected in it is not judged. Cases that lack the same are told once, at the first.
 *
 * ```crank wrong
 * use "cases.crank"
 *
 * setup parking from wagtail {
 *   case hairpin { speed 40 km/h, lateral 1.2 g, steer 90 deg }
 * }
 * ```
 *
 * ```crank right
 * use "cases.crank"
 *
 * setup parking from wagtail {
 *   case hairpin { speed 40 km/h, lateral 1.2 g }
 * }
 * ```
 */
import type { CaseAbsent } from "../../../analyses/equilibrium/results.js";
import { findWord } from "../../../../grammar/vocabulary/index.js";
import { starterText } from "../../../../grammar/vocabulary/starter-text.js";
import { absentCases, caseFinding, type CheckedCase, sameInBase } from "../../case-findings.js";
import type { RuleContext } from "../../context.js";
import type { Finding, Fix, Rule } from "../../finding.js";
import { changedBy } from "../../proven.js";
import { lineAdded } from "../../setup-lines.js";
import { nameOf } from "../../where.js";
import { all } from "../../wording.js";

const meta = {
  id: "case-not-solved",
  title: "A load case that lacks something to be solved",
  cost: "solved",
  severity: "information",
} as const;

export const caseNotSolved: Rule = { meta, check, fix };

/** Words of the car that a case may take and that may be left out. */
const OPTIONAL = ["cg-height", "brakes", "drive"] as const;

type Unsolved = CheckedCase<CaseAbsent>;

/** Which car's case it is, for the fix. */
interface Data {
  readonly of: string;
  readonly caseName: string;
}

function* check(context: RuleContext): Generator<Finding> {
  for (const [first, ...others] of alike(absentCases(context))) {
    if (first === undefined) continue;
    const { car, model, result } = first;
    const names = [first, ...others].map((one) => one.model.name);
    const message = `${all(names)} of ${nameOf(car)} ${names.length === 1 ? "is" : "are"} not solved: ${result.reason}. Say what is missing, or leave it out of the case.`;
    const data: Data = { of: nameOf(car), caseName: model.name };
    yield { ...caseFinding(context, first, meta, message), data };
  }
}

/** One axle drawn by itself is a way to begin, not a mistake. */
const isHalf = ({ car }: Unsolved): boolean =>
  car.model.axles.front === undefined || car.model.axles.rear === undefined;

/** Those of one car for one reason together, without what the base has already. */
function alike(cases: readonly Unsolved[]): readonly (readonly Unsolved[])[] {
  const groups = new Map<string, Unsolved[]>();
  for (const found of cases) {
    const { reason } = found.result;
    if (isHalf(found) || sameInBase(found, (base) => base.kind === "absent" && base.reason === reason)) continue;
    const key = `${nameOf(found.car)} ${reason}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [found]);
    else group.push(found);
  }
  return [...groups.values()];
}

/** The missing word with a usual value, offered only where the case is solved with it. */
function fix({ data }: Finding, context: RuleContext): readonly Fix[] {
  const { of, caseName } = data as Data;
  const car = context.cars.find((one) => nameOf(one) === of);
  if (car === undefined) return [];
  return OPTIONAL.flatMap((name) => {
    const word = findWord("car", name);
    const line = word === undefined ? undefined : starterText(word);
    const edit = line === undefined ? undefined : lineAdded(context, car.model, name, line);
    if (line === undefined || edit === undefined || car.model.block.statements.some((one) => one.word === name))
      return [];
    const made: Fix = { title: `Add "${line}"`, edits: [edit], preferred: true, safe: false };
    return isSolved(changedBy(context, made), of, caseName) ? [made] : [];
  });
}

function isSolved(context: RuleContext | undefined, of: string, caseName: string): boolean {
  const result = context?.cars.find((one) => nameOf(one) === of)?.cases.at(caseName);
  return result !== undefined && result.kind !== "absent";
}
