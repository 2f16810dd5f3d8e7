/** A comparison for a machine. The form is described by `schema/compare.json` of the package. */
import type { Figure } from "../../analyses/results.js";
import type { Change, Told } from "../../views/comparison/change.js";
import type { ComparedFinding, Comparison } from "../../views/comparison/comparison.js";
import type { Effect } from "../../views/comparison/effects.js";
import type { ReviewedCar } from "../../views/comparison/review.js";
import type { VerdictChange } from "../../views/comparison/verdicts.js";
import type { Compared } from "../comparing/compared.js";
import { shown } from "../workspace.js";
import { json, quantity, rounded } from "./json.js";

export function compareJson({ review, troubles }: Compared): string {
  const { old, now, headline, differs, cars } = review;
  return json({ old, new: now, headline, differs, cars: cars.map(carJson), unreadable: troubles });
}

function carJson({ name, oldName, status, path, comparison, follows }: ReviewedCar): object {
  return {
    name,
    oldName: oldName ?? null,
    status,
    file: path,
    follows: follows ?? null,
    ...(comparison === undefined ? { comparison: null } : { comparison: comparisonJson(comparison) }),
  };
}

function comparisonJson(found: Comparison): object {
  return {
    old: { name: found.old.name, file: shown(found.old.uri) },
    new: { name: found.now.name, file: shown(found.now.uri) },
    headline: found.headline,
    threshold: found.threshold,
    changes: found.changes.map(changeJson),
    effects: found.effects.map(effectJson),
    still: found.still,
    cases: found.cases.map(({ name, old, now }) => ({ case: name, old: old ?? null, new: now ?? null })),
    expectations: found.verdicts.map(verdictJson),
    findings: { new: found.fresh.map(findingJson), gone: found.gone.map(findingJson) },
  };
}

const toldJson = (told: Told | undefined): object | null =>
  told === undefined ? null : { text: told.text, file: shown(told.origin.uri), line: told.line ?? null };

function changeJson({ kind, of, path, group, old, now, difference, details, also }: Change): object {
  return {
    kind,
    of,
    path,
    axle: group.axle ?? null,
    topic: group.topic,
    old: toldJson(old),
    new: toldJson(now),
    difference: difference ?? null,
    also,
    details: details.map(changeJson),
  };
}

function effectJson({ subject, name, at, group, isMain, unit, old, now, relative, difference }: Effect): object {
  const figure = (value: Figure): object => quantity(value, unit);
  return {
    subject,
    figure: name,
    at: at ?? null,
    axle: group.axle ?? null,
    topic: group.topic,
    main: isMain,
    old: figure(old),
    new: figure(now),
    relative: relative === undefined ? null : rounded(relative),
    difference,
  };
}

const verdictJson = ({ asked, status, wanted, old, now, message, origin, line }: VerdictChange): object => ({
  figure: asked,
  status,
  wanted,
  old: old ?? null,
  new: now ?? null,
  message,
  file: shown(origin.uri),
  line,
});

const findingJson = ({ rule, severity, message, uri, line }: ComparedFinding): object => ({
  rule,
  severity,
  message,
  file: shown(uri),
  line,
});
