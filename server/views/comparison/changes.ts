/**
 * The resolved differences of two cars or set-ups: both are resolved first, so that order, layout, units, `let`, files and
 * bases make none.
 *
 * In: two resolved cars. Out: changes in the order of the text, car first, then axles, cases, expectations.
 * Invariant: equal cars give none; a property that differs gives exactly one entry (a part's figures are told under the part).
 */
import type { AxleModel, CarModel, ResolvedBlock, ResolvedStatement } from "../../model/car.js";
import type { AxleName, Side } from "../../model/origin.js";
import { type NumberAt, propertyAt } from "../../model/property-at.js";
import { isSameNumber } from "../../model/same.js";
import { showNumber } from "../../quantities/index.js";
import { type BlockAt, blockChanges } from "./block-changes.js";
import type { Change, ChangeGroup } from "./change.js";
import { expectationChanges } from "./expectation-changes.js";
import { isElement, type Rename, renamesBetween, withNewNames } from "./renames.js";

const AXLES = ["front", "rear"] as const;

export function changesBetween(old: CarModel, now: CarModel): readonly Change[] {
  if (old === now) return [];
  const renames = renamesBetween(old, now);
  const before = withNewNames(old.block, undefined, renames);
  const ofCar = blockChanges(before, now.block, { path: [], group: carGroup }, ({ word }) => notOfCar.has(word));
  const isOfCar = ({ group }: Change): boolean => group.topic !== "cases";
  const all = [
    ...titleChange(old, now),
    ...renames.map((rename) => renameChange(rename, now)),
    ...ofCar.filter(isOfCar),
    ...AXLES.flatMap((axle) => axleChanges(old.axles[axle], now.axles[axle], axle, renames)),
    ...ofCar.filter((change) => !isOfCar(change)),
    ...expectationChanges(before, now.block),
  ];
  return sameLines(all).map((change) => withSteps(change, old, now));
}

const notOfCar: ReadonlySet<string> = new Set(["axle", "expect"]);

const topics: Readonly<Record<string, string>> = {
  aero: "air",
  air: "air",
  case: "cases",
  kerb: "road",
  road: "road",
  "clearance-point": "clearances",
};

const carGroup: BlockAt["group"] = (statement, block) => ({
  axle: undefined,
  topic: isElement(statement, block) ? modesOf(statement) : (topics[statement.word] ?? "car"),
});

export const modesOf = ({ values }: ResolvedStatement): string =>
  values.flatMap((value) => (value.kind === "modes" ? value.modes.map(({ text }) => text) : [])).join(" and ");

function axleGroup(axle: AxleName): BlockAt["group"] {
  return (statement, block): ChangeGroup => {
    if (isElement(statement, block)) return { axle, topic: modesOf(statement) };
    const topic = statement.word === "linkage" ? "geometry" : statement.word === "wheel" ? "wheels" : "axle";
    return { axle, topic };
  };
}

function titleChange(old: CarModel, now: CarModel): readonly Change[] {
  if (old.title === now.title) return [];
  const told = ({ title, origin }: CarModel) => (title === undefined ? undefined : { text: `"${title}"`, origin });
  const kind = old.title === undefined ? "added" : now.title === undefined ? "removed" : "changed";
  const group = { axle: undefined, topic: "car" };
  const rest = { difference: undefined, details: [], also: [] };
  return [{ kind, of: "note", path: "title", group, old: told(old), now: told(now), ...rest }];
}

function renameChange({ of, axle, from, to, old, now }: Rename, car: CarModel): Change {
  const path = [...(axle === undefined ? [] : [axle]), ...(of === "eye" ? ["rocker"] : []), to].join(".");
  const block = axle === undefined ? car.block : car.axles[axle]?.block;
  const element = of === "element" ? block?.statements.find(({ name }) => name?.text === to) : undefined;
  const topic = of === "eye" ? "geometry" : of === "case" ? "cases" : element === undefined ? "car" : modesOf(element);
  return {
    kind: "renamed",
    of,
    path,
    group: { axle, topic },
    old: { text: from, origin: old },
    now: { text: to, origin: now },
    difference: "the same under another name",
    details: [],
    also: [],
  };
}

/** Left and right by themselves; what is the same on both is told once. */
function axleChanges(
  old: AxleModel | undefined,
  now: AxleModel | undefined,
  axle: AxleName,
  renames: readonly Rename[],
): readonly Change[] {
  const at: BlockAt = { path: [axle], group: axleGroup(axle) };
  const block = (model: AxleModel | undefined, side: Side): ResolvedBlock | undefined => {
    const own = side === "right" ? (model?.rightBlock ?? model?.block) : model?.block;
    return own && (model === old ? withNewNames(own, axle, renames) : own);
  };
  const left = blockChanges(block(old, "left"), block(now, "left"), at);
  if (old?.rightBlock === undefined && now?.rightBlock === undefined) return left;
  const right = blockChanges(block(old, "right"), block(now, "right"), at, isOneForBoth);
  const merged = left.map((change) => {
    const other = right.find((one) => isSaidAlike(change, one));
    return other !== undefined || !isSided(change, old, now) ? change : onSide(change, axle, "left");
  });
  const ofRight = right.filter((change) => !left.some((one) => isSaidAlike(one, change)));
  return [...merged, ...ofRight.map((change) => onSide(change, axle, "right"))];
}

/** Lines of an axle of which only the left side's are read. */
function isOneForBoth(statement: ResolvedStatement): boolean {
  if (statement.word === "linkage" || statement.word === "wheel" || statement.word === "anti-roll-bar") return false;
  return !modesOf(statement).split(" and ").includes("corner");
}

/** Whether the path leads into something that each side has of its own. */
function isSided({ path }: Change, ...axles: readonly (AxleModel | undefined)[]): boolean {
  const [, first, second] = path.split(".");
  return axles.some((axle) =>
    axle?.block.statements.some((statement) => {
      const isNamed = statement.name?.text === first || (statement.name === undefined && statement.word === first);
      if (statement.word === "linkage" || statement.word === "wheel")
        return statement.block?.statements.some(({ word, name }) => (name?.text ?? word) === first) === true;
      if (statement.word === "anti-roll-bar") return isNamed && (second === "lever" || second === "drop-link");
      return isNamed && !isOneForBoth(statement);
    }),
  );
}

const isSaidAlike = (a: Change, b: Change): boolean =>
  a.path === b.path &&
  a.of === b.of &&
  a.kind === b.kind &&
  a.old?.text === b.old?.text &&
  a.now?.text === b.now?.text &&
  a.details.length === b.details.length &&
  a.details.every((detail, i) => isSaidAlike(detail, b.details[i] ?? detail));

/** Points of a right side are told where they are, as they are written. */
function onSide(change: Change, axle: AxleName, side: Side): Change {
  const path = `${axle}.${side}${change.path.slice(axle.length)}`;
  const turned = (text: string): string => (side === "right" ? mirroredText(text) : text);
  return {
    ...change,
    path,
    old: change.old && { ...change.old, text: turned(change.old.text) },
    now: change.now && { ...change.now, text: turned(change.now.text) },
    difference: change.difference && turned(change.difference),
    details: change.details.map((detail) => onSide(detail, axle, side)),
  };
}

/** `(x, y, z)` or `(y, z)` inside a text, y turned round. */
function mirroredText(text: string): string {
  return text.replaceAll(/\(([-+\d., ]+)\)/g, (_, inner: string) => {
    const parts = inner.split(", ");
    const at = parts.length === 2 ? 0 : 1;
    const turned = parts.map((part, i) => (i === at ? turnedNumber(part) : part));
    return `(${turned.join(", ")})`;
  });
}

function turnedNumber(text: string): string {
  const hasSign = text.startsWith("+") || text.startsWith("-");
  if (text === "0") return text;
  if (text.startsWith("-")) return text.startsWith("-0 ") ? text : text.slice(1);
  return `-${hasSign ? text.slice(1) : text}`;
}

/** One line of a catalogue behind several fitted parts is one change. */
function sameLines(all: readonly Change[]): readonly Change[] {
  const seen = new Map<string, Change>();
  for (const change of all) {
    const { old, now } = change;
    const place = (one: typeof old): string =>
      one === undefined ? "" : `${one.origin.uri} ${one.origin.start} ${one.text}`;
    const key = old === undefined || now === undefined ? change.path : `${place(old)} → ${place(now)} ${change.of}`;
    const first = seen.get(key);
    seen.set(key, first === undefined ? change : { ...first, also: [...first.also, change.path] });
  }
  return [...seen.values()];
}

/** Lengths of adjusters in their steps too: "+2.5 mm, 2 turns". */
function withSteps(change: Change, old: CarModel, now: CarModel): Change {
  if (change.of !== "property" || change.kind === "renamed") return change;
  const [before, after] = [propertyAt(old, change.path), propertyAt(now, change.path)];
  if (before?.kind !== "number" || after?.kind !== "number" || after.step === undefined) return change;
  const words = stepWords(after.given.value - before.given.value, after);
  return words === undefined
    ? change
    : { ...change, difference: [change.difference, words].filter(Boolean).join(", ") };
}

function stepWords(change: number, { step }: NumberAt): string | undefined {
  if (step === undefined || !(step.value > 0)) return undefined;
  const count = Math.abs(change) / step.value;
  const nearest = Math.round(count);
  const shown = showNumber(isSameNumber(count, nearest) ? nearest : count, 3);
  const unit = step.unit.includes("turn") ? "turn" : "step";
  return `${shown} ${unit}${shown === "1" ? "" : "s"}`;
}
