/** Cylinders and lines of a hydraulic link: their ends exist, their lines join cylinders that exist. */
import { attachmentOf, type Surroundings } from "./attachments.js";
import type { ResolvedValue } from "./car.js";
import { wordIn, type TreeStatement } from "./tree.js";

export function checkCylinders(link: TreeStatement, around: Surroundings): void {
  const lines = link.block?.statements ?? [];
  for (const line of lines) {
    if (line.word === "cylinder") checkEnds(line, around);
    if (line.word !== "line") continue;
    const oneWay = wordIn(line.block, "one-way")?.values ?? [];
    for (const value of [...line.values, ...oneWay]) if (value.kind === "path") checkName(value, link, around);
  }
}

function checkEnds(cylinder: TreeStatement, around: Surroundings): void {
  for (const value of wordIn(cylinder.block, "between")?.values ?? []) {
    if (value.kind === "attachment") attachmentOf(value, { ...around, word: "between" });
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
