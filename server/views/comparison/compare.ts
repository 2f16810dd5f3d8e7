/**
 * Two cars or set-ups held against each other: what differs between them as resolved, what that does to the car, which
 * expectations and findings come and go, and all of it in one sentence.
 *
 * In: two checked cars with their files. Out: plain data that every face shows.
 */
import type { CheckedCar } from "../../findings/context.js";
import type { Finding } from "../../findings/finding.js";
import { nameOfCase } from "../modes-page.js";
import { whyNone } from "../cases-page.js";
import { unitsOfCar } from "../units-of-car.js";
import type { Origin } from "../../model/origin.js";
import type { FileView } from "../../snapshot/workspace.js";
import type { Change, Told } from "./change.js";
import { changesBetween } from "./changes.js";
import { effectsBetween } from "./effects.js";
import { findingChanges, findingsOf } from "./finding-changes.js";
import { headlineOf } from "./headline.js";
import type { CaseChange, ComparedFinding, Comparison, SideName } from "./comparison.js";
import { axlePictures } from "./pictures.js";
import { type NewNames, newNames, renamesBetween } from "./renames.js";
import { USUAL_THRESHOLD } from "./thresholds.js";
import { verdictChanges } from "./verdicts.js";

export interface ComparedSide {
  readonly car: CheckedCar;
  readonly file: FileView;
  /** As the reader knows it: "quill/wet.crank at main". */
  readonly label: string;
}

export function compare(old: ComparedSide, now: ComparedSide, threshold = USUAL_THRESHOLD): Comparison {
  const changes = changesBetween(old.car.model, now.car.model).map((change) => withLines(change, old.file, now.file));
  const names = newNames(renamesBetween(old.car.model, now.car.model));
  const unit = unitsOfCar(now.car.model);
  const { moved, still } = effectsBetween(old.car, now.car, { unit, share: threshold, names });
  const findings = findingChanges(
    [old.file, findingsOf(old.file, old.car.model)],
    [now.file, findingsOf(now.file, now.car.model)],
  );
  const told = {
    changes,
    effects: moved,
    cases: caseChanges(old.car, now.car, names),
    verdicts: verdictChanges(old.car, now.car, names, (origin, side) =>
      lineIn((side === "old" ? old : now).file, origin),
    ),
    fresh: placed(findings.fresh, now.file),
    gone: placed(findings.gone, old.file),
  };
  return {
    old: sideName(old),
    now: sideName(now),
    bases: now.car.model.bases,
    differs: changes.length > 0,
    headline: headlineOf(told),
    pictures: axlePictures(old.car.model, now.car.model, changes),
    still,
    threshold,
    ...told,
  };
}

const placed = (findings: readonly Finding[], file: FileView): readonly ComparedFinding[] =>
  findings.map((finding) => ({ ...finding, line: lineIn(file, { uri: finding.uri, ...finding.span }) }));

/** A version of a file has its own lines: the same address may stand for two texts. */
function withLines(change: Change, old: FileView, now: FileView): Change {
  const line = (told: Told | undefined, file: FileView): Told | undefined =>
    told && { ...told, line: lineIn(file, told.origin) };
  return {
    ...change,
    old: line(change.old, old),
    now: line(change.now, now),
    details: change.details.map((detail) => withLines(detail, old, now)),
  };
}

/** From 1; a place in a text that is not at hand is at its beginning. */
const lineIn = (file: FileView, { uri, start }: Origin): number =>
  (file.parsedOf(uri)?.lines.position(start).line ?? 0) + 1;

const sideName = ({ car: { model }, file, label }: ComparedSide): SideName => ({
  name: model.setup ?? model.name,
  uri: file.uri,
  label,
});

function caseChanges(old: CheckedCar, now: CheckedCar, names: NewNames): readonly CaseChange[] {
  const why = ({ cases }: CheckedCar, name: string): string | undefined => {
    const result = cases.at(name);
    return result && whyNone(result);
  };
  return old.cases.names
    .filter((name) => now.cases.names.includes(names.case(name)))
    .map((name) => ({ name: names.case(name), old: why(old, name), now: why(now, names.case(name)) }))
    .filter((one) => (one.old === undefined) !== (one.now === undefined));
}

/** "no equilibrium any more in hairpin: …" */
export const caseChangeText = ({ name, old, now }: CaseChange): string =>
  now === undefined
    ? `The car has an equilibrium ${nameOfCase(name)} now (before: ${old ?? ""}).`
    : `The car has no figures ${nameOfCase(name)} any more: ${now}.`;
