/**
 * Findings that are new, and those that are gone. The same finding is known again by its rule and the names around it, so
 * that neither a moved line nor another figure in its message makes it a new one; else by its words.
 */
import type { Finding } from "../../findings/finding.js";
import type { CarModel } from "../../model/car.js";
import type { FileView } from "../../snapshot/workspace.js";
import { placeAt } from "../place.js";

export interface FindingChanges {
  readonly fresh: readonly Finding[];
  readonly gone: readonly Finding[];
}

/** Expectations are told by themselves; a hint is a matter of layout. */
const isTold = ({ rule, severity }: Finding): boolean => rule !== "missed-expectation" && severity !== "hint";

/** Those of one car or set-up, and those of its file that are of none. */
export function findingsOf(file: FileView, car: CarModel): readonly Finding[] {
  const isOf = ({ origin }: CarModel, { span }: Finding): boolean =>
    origin.uri === file.uri && origin.start <= span.start && span.end <= origin.end;
  return file
    .findings()
    .filter(isTold)
    .filter((finding) => isOf(car, finding) || !file.cars.some(({ model }) => isOf(model, finding)));
}

export function findingChanges(
  [oldFile, oldFindings]: readonly [FileView, readonly Finding[]],
  [file, findings]: readonly [FileView, readonly Finding[]],
): FindingChanges {
  const byPlace = unmatched(
    oldFindings,
    findings,
    (of) => (finding) => placeKey(of === "old" ? oldFile : file, finding),
  );
  return unmatched(
    byPlace.gone,
    byPlace.fresh,
    () =>
      ({ rule, message }) =>
        `${rule}\n${message}`,
  );
}

function unmatched(
  old: readonly Finding[],
  now: readonly Finding[],
  keyOf: (of: "old" | "now") => (finding: Finding) => string,
): FindingChanges {
  const [oldKey, nowKey] = [keyOf("old"), keyOf("now")];
  const left = new Map<string, Finding[]>();
  for (const finding of old) left.set(oldKey(finding), [...(left.get(oldKey(finding)) ?? []), finding]);
  const fresh = now.filter((finding) => left.get(nowKey(finding))?.shift() === undefined);
  return { fresh, gone: [...left.values()].flat() };
}

/** Rule, and the heads of the statements around it; the car's or set-up's own name says nothing. */
function placeKey({ parsed }: FileView, { rule, span }: Finding): string {
  const { around, statement } = placeAt(parsed.document, span.start);
  const heads = [...around, ...(statement === undefined ? [] : [statement])].map(({ head, items }) => {
    const [first] = items;
    const name = first?.kind === "path" ? first.segments.map(({ text }) => text).join(".") : "";
    return `${head.segments.map(({ text }) => text).join(".")} ${name}`;
  });
  return [rule, ...heads.slice(1)].join("\n");
}
