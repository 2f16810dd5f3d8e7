/**
 * How a set-up differs from what it derives from, in a few words: "10 changes: front third rate 55 → 45 N/mm, front corner-bar
 * TB-110 → TB-105 and 8 more". What the set-up says first is told first.
 *
 * Invariant: notes and what was measured are no changes; the count is that of the comparison without them.
 */
import type { CarModel } from "../model/car.js";
import { parseUnit } from "../quantities/index.js";
import type { Change, Told } from "./comparison/change.js";
import { changesBetween } from "./comparison/changes.js";

/** As many as one reads at a glance above a line, and no more characters: the set-up's figures stand behind them. */
const MOST = 3;
const ROOM = 64;

/** @param base what the set-up derives from directly */
export function differenceLine(setup: CarModel, base: CarModel): string {
  const changes = changesBetween(base, setup).filter(({ of, path }) => of !== "note" && path !== "measured");
  if (changes.length === 0) return `no changes from ${base.setup ?? base.name}`;
  const told = withinRoom(asWritten(changes, setup).slice(0, MOST).map(words));
  const more = changes.length - told.length;
  const count = changes.length === 1 ? "1 change" : `${changes.length} changes`;
  return `${count}: ${told.join(", ")}${more === 0 ? "" : ` and ${more} more`}`;
}

/** The first in any case. */
function withinRoom(texts: readonly string[]): readonly string[] {
  const count = texts.findIndex((_, i) => i > 0 && texts.slice(0, i + 1).join(", ").length > ROOM);
  return count < 0 ? texts : texts.slice(0, count);
}

/** In the order of the set-up's own lines; what has no line there, as an element that is taken out, comes behind. */
function asWritten(changes: readonly Change[], { origin }: CarModel): readonly Change[] {
  const place = ({ now }: Change): number =>
    now !== undefined && now.origin.uri === origin.uri && now.origin.start >= origin.start
      ? now.origin.start
      : Number.MAX_SAFE_INTEGER;
  return [...changes].sort((a, b) => rank(a) - rank(b) || place(a) - place(b));
}

/** The car before the cases that it is looked at in, and what is expected of it. */
const rank = ({ of, group }: Change): number => (of === "expectation" ? 2 : group.topic === "cases" ? 1 : 0);

function words({ kind, of, path, old, now }: Change): string {
  const name = spoken(path);
  if (kind === "renamed") return `${old?.text ?? ""} renamed ${now?.text ?? ""}`;
  if (old === undefined) return `with ${name}${valueOf(of, now)}`;
  if (now === undefined) return `without ${name}`;
  return `${name} ${arrow(old.text, now.text)}`;
}

/** What an element is for is told by its name; a value has only its figures. */
const valueOf = (of: Change["of"], now: Told | undefined): string =>
  of === "element" || of === "case" || now === undefined ? "" : ` ${now.text}`;

/** "front third rate": dots are for those who write, and a part is known by where it is fitted. */
const spoken = (path: string): string =>
  path.startsWith("expect ")
    ? path
    : path
        .replace(/\.fit$/, "")
        .split(".")
        .join(" ");

/** "55 → 45 N/mm": a unit that is the same on both sides stands once. */
function arrow(old: string, now: string): string {
  const unit = /^.* (\S+)$/s.exec(now)?.[1];
  const isShared = unit !== undefined && old.endsWith(` ${unit}`) && parseUnit(unit) !== undefined;
  return `${isShared ? old.slice(0, -unit.length - 1) : old} → ${now}`;
}
