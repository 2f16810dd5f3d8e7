/** Cylinders and lines of a hydraulic link: their ends exist, their lines join cylinders that exist. */
import { attachmentOf, type Surroundings } from "./attachments.js";
import type { Attachment, ConnectionModel, CylinderModel, LineModel, ResolvedValue } from "./car.js";
import { wordIn, type TreeStatement } from "./tree.js";

type CylindersModel = Extract<ConnectionModel, { kind: "cylinders" }>;

/** Undefined where one of them has no ends: a problem says why. */
export function cylindersOf(
  link: TreeStatement,
  first: TreeStatement,
  around: Surroundings,
): CylindersModel | undefined {
  const statements = link.block?.statements ?? [];
  const written = statements.filter(({ word, name, block }) => word === "cylinder" && name !== undefined && block);
  const cylinders = written.flatMap((statement) => cylinderOf(statement, around) ?? []);
  if (cylinders.length < written.length || cylinders.length === 0) return undefined;
  return {
    kind: "cylinders",
    cylinders,
    lines: statements.flatMap((line) => lineOf(line) ?? []),
    origin: first.origin,
  };
}

function cylinderOf({ name, block, origin }: TreeStatement, around: Surroundings): CylinderModel | undefined {
  const ends = (wordIn(block, "between")?.values ?? []).flatMap((value): Attachment[] => {
    const end = value.kind === "attachment" ? attachmentOf(value, { ...around, word: "between" }) : undefined;
    return end === undefined ? [] : [end];
  });
  const [one, other] = ends;
  if (name === undefined || block === undefined || one === undefined || other === undefined) return undefined;
  return { name: name.text, ends: [one, other], block, origin };
}

function lineOf({ word, values, block, origin }: TreeStatement): LineModel | undefined {
  if (word !== "line") return undefined;
  const [from, to] = values.flatMap((value) => (value.kind === "path" ? [value.segments.join(".")] : []));
  if (from === undefined || to === undefined) return undefined;
  const crossed = values.some((value) => value.kind === "word" && value.text === "crossed");
  const [valve] = wordIn(block, "one-way")?.values ?? [];
  return { from, to, crossed, oneWay: valve?.kind === "path" ? valve.segments.join(".") : undefined, block, origin };
}

/** That lines and valves speak of cylinders of this link. */
export function checkLines(link: TreeStatement, around: Surroundings): void {
  for (const line of link.block?.statements ?? []) {
    if (line.word !== "line") continue;
    const oneWay = wordIn(line.block, "one-way")?.values ?? [];
    for (const value of [...line.values, ...oneWay]) if (value.kind === "path") checkName(value, link, around);
  }
}

type PathValue = Extract<ResolvedValue, { kind: "path" }>;

function checkName(value: PathValue, link: TreeStatement, around: Surroundings): void {
  const name = value.segments.join(".");
  const cylinders = (link.block?.statements ?? []).filter((line) => line.word === "cylinder");
  const found = cylinders.find((line) => line.name?.text === name);
  if (found?.root === undefined) {
    const candidates = cylinders.flatMap((line) => line.name?.text ?? []);
    around.sink.report({ ...value.origin, kind: "unknown-name", name, target: "cylinder", candidates });
    return;
  }
  const axle = around.axle && { segment: around.axle.name, outer: undefined };
  const place = { segment: link.name?.text ?? "", outer: axle };
  around.sink.refer({ target: "cylinder", name, place, declaration: found.root }, value.origin);
}
