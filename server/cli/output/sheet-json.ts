/** A setup sheet for machines, and for the next sheet to be held against. The form is described by `schema/sheet.json`. */
import { cautions } from "../../views/cautions.js";
import type { SheetOrigin } from "../../views/sheet/html.js";
import { itemsOf, type SetupSheet, type SheetElement, type SheetItem } from "../../views/sheet/item.js";
import { json } from "./json.js";

export function sheetJson(sheet: SetupSheet, { file, commit, time }: SheetOrigin): string {
  const { car, title, setup, from, notes, errors, warnings, last } = sheet;
  return json({
    car,
    title,
    setup: setup ?? null,
    from,
    file,
    commit: commit ?? null,
    time,
    notes,
    findings: { errors, warnings },
    missing: sheet.missing,
    items: itemsOf(sheet).map(itemJson),
    elements: elementsOf(sheet).map(({ path, kind, part, settings }) => ({
      path,
      kind,
      part: part?.value ?? null,
      settings: settings.map(({ key }) => key),
    })),
    expectations: sheet.expectations,
    last: last === undefined ? null : { name: last.name, gone: last.gone.map(itemJson) },
    cautions,
  });
}

const elementsOf = ({ axles, elements }: SetupSheet): readonly SheetElement[] => [
  ...axles.flatMap((axle) => axle.elements),
  ...elements,
];

const itemJson = ({ key, name, value, how, was, isNew }: SheetItem): object => ({
  key,
  name,
  value,
  ...(how === undefined ? {} : { how }),
  ...(was === undefined ? {} : { was }),
  ...(isNew === true ? { new: true } : {}),
});
