/** What is expected otherwise than before: by figure and case, whatever order the lines stand in. */
import type { ResolvedBlock, ResolvedStatement } from "../../model/car.js";
import { isSameStatement } from "../../model/same.js";
import type { Change } from "./change.js";
import { statementText } from "./value-text.js";

export function expectationChanges(old: ResolvedBlock, now: ResolvedBlock): readonly Change[] {
  const [before, after] = [expected(old), expected(now)];
  const keys = new Set([...after.keys(), ...before.keys()]);
  return [...keys].flatMap((key) => {
    const [was, is] = [before.get(key), after.get(key)];
    if (was !== undefined && is !== undefined && isSameStatement(was, is)) return [];
    return [changeOf(key, was, is)];
  });
}

/** By "front.heave-rate at hairpin". */
function expected({ statements }: ResolvedBlock): ReadonlyMap<string, ResolvedStatement> {
  return new Map(
    statements.flatMap((statement) => (statement.word === "expect" ? [[keyOf(statement), statement] as const] : [])),
  );
}

/** Figure and, of a form with `at`, the case: what stands before the limits. */
const keyOf = ({ values }: ResolvedStatement): string =>
  values.flatMap((value) => (value.kind === "path" ? [value.segments.join(".")] : [])).join(" at ");

function changeOf(key: string, was: ResolvedStatement | undefined, is: ResolvedStatement | undefined): Change {
  const told = (statement: ResolvedStatement | undefined) =>
    statement && { text: wantedText(statement, key), origin: statement.origin };
  return {
    kind: was === undefined ? "added" : is === undefined ? "removed" : "changed",
    of: "expectation",
    path: `expect ${key}`,
    group: { axle: undefined, topic: "expectations" },
    old: told(was),
    now: told(is),
    difference: undefined,
    details: [],
    also: [],
  };
}

/** Without the figure, which the path says. */
const wantedText = (statement: ResolvedStatement, key: string): string =>
  statementText(statement, "car").slice(key.length).trim();
