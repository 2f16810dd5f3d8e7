/**
 * Override lines of a set-up, of a `left {}` or `right {}` block, and dotted ones inside a car,
 * applied one after the other to a car's tree.
 *
 * Invariant: the tree that is given is never changed; what a line cannot be applied to is told,
 * and the line has no effect.
 */
import type { Statement } from "../../grammar/index.js";
import { findWord } from "../../grammar/vocabulary/index.js";
import { adjustedInside } from "./adjuster.js";
import { Removal, reportNoSides, reportStays, Setting, type Line } from "./changes.js";
import { changeAt, type Change } from "./edit.js";
import { plainWord } from "./forms.js";
import { mention } from "./mentions.js";
import type { Origin } from "./origin.js";
import type { Reading } from "./read-block.js";
import { blockScope, isLet, scopeIn, type Scope } from "./scope.js";
import { mayDiffer } from "./sides.js";
import { at } from "./sink.js";
import { passedOverFor, routeOf, startOf, statementAt, stepIn, type Found, type Route } from "./steps.js";
import { withAxle, type CarTree } from "./tree.js";

export class Overrides {
  #tree: CarTree;
  readonly #reading: Reading;
  readonly #isSetup: boolean;
  readonly #written = new Map<string, Origin>();

  constructor(tree: CarTree, reading: Reading, isSetup: boolean) {
    this.#tree = tree;
    this.#reading = reading;
    this.#isSetup = isSetup;
  }

  get tree(): CarTree {
    return this.#tree;
  }

  /** `place` is the dotted place of the block that the line stands in. */
  apply(raw: Statement, place: readonly string[], scope: Scope): void {
    const segments = raw.head.segments;
    const path = [...place, ...segments.map((segment) => segment.text)];
    const line = this.#normal({ raw, path, segments, items: raw.items, scope });
    const route = routeOf(this.#tree, line.path);
    if (route.rest.length === 0) return this.#axle(line, route);
    const found = statementAt(this.#tree, line.path);
    if (found !== undefined && isGroup(found, line)) return this.#group(line, found, route);
    const inside = found && insideAdjuster(line, found);
    if (inside !== undefined) return this.#set(inside, routeOf(this.#tree, inside.path));
    const block = found?.statement.block;
    if (block !== undefined && line.items.length === 0 && raw.block === undefined)
      return reportUnfinished(
        line,
        block.statements.map(({ word }) => word).find((word) => word !== "let"),
      );
    this.#set(line, route);
  }

  /** `remove front.third`. */
  remove(raw: Statement, scope: Scope): void {
    const [item] = raw.items;
    if (item?.kind !== "path") return;
    const path = item.segments.map((segment) => segment.text);
    const line: Line = { raw, path, segments: item.segments, items: [], scope };
    const route = routeOf(this.#tree, path);
    if (route.rest.length === 0) reportStays(line, "A whole axle or side is not taken out.");
    else this.#change(line, route, new Removal(line, route));
  }

  /** `damper side { … }` names the same thing as `side { … }` where it is there already. */
  #normal(line: Line): Line {
    const [first, ...rest] = line.items;
    const name = plainWord(first);
    if (line.segments.length !== 1 || name === undefined || first?.kind !== "path") return line;
    const path = [...line.path.slice(0, -1), name];
    const isThere =
      name === "front" || name === "rear" ? routeOf(this.#tree, path).axle : statementAt(this.#tree, path);
    const word = typeof isThere === "object" ? isThere.statement.word : "axle";
    if (isThere === undefined || word !== line.path.at(-1)) return line;
    return { ...line, path, segments: first.segments, items: rest };
  }

  #group(line: Line, found: Found, route: Route): void {
    if (line.items.length > 0) this.#set({ ...line, raw: { ...line.raw, block: undefined } }, route);
    else statementAt(this.#tree, line.path, (step) => mention(line, step));
    this.#inside(line, found.statement.block?.concept ?? "");
  }

  #axle(line: Line, { side }: Route): void {
    const { raw, scope } = line;
    if (raw.block !== undefined) return this.#inside(line, side === undefined ? "axle" : "side");
    const word = line.path.join(".");
    const detail = "A whole axle or side cannot be given a value; say in braces what differs inside.";
    scope.sink.report({ ...at(scope.uri, raw.head), kind: "wrong-form", word, expected: [`${word} { }`], detail });
  }

  #inside({ raw, path, scope }: Line, concept: string): void {
    const entries = raw.block?.entries ?? [];
    const inner = blockScope(scopeIn(scope, path), entries, concept);
    for (const entry of entries) {
      if (entry.kind === "row") {
        const problem = {
          kind: "wrong-form",
          word: path.join("."),
          expected: [],
          detail: "No rows stand here.",
        } as const;
        scope.sink.report({ ...at(scope.uri, entry), ...problem });
      } else if (!isLet(entry)) this.apply(entry, path, inner);
    }
  }

  #set(line: Line, route: Route): void {
    if (!this.#isNew(line)) return;
    const setting = new Setting(line, route, this.#reading);
    this.#change(line, route, setting);
    setting.checkNeedless(!this.#isSetup && route.side !== undefined ? "mirror-image" : "same-value");
  }

  /** The same path twice in one set-up: only `by` may add up. */
  #isNew({ raw, path, items, scope }: Line): boolean {
    const place = at(scope.uri, raw);
    const word = path.at(-1) ?? "";
    const isMany = findWord("setup", word)?.times === "many" || findWord("spring", word)?.times === "many";
    if (plainWord(items[0]) === "by" || isMany) return true;
    const isNamed = ["axle", "car"].some((concept) => findWord(concept, word)?.times === "named");
    const key = [...path, ...(isNamed ? [plainWord(items[0])] : [])].join(".");
    const first = this.#written.get(key);
    if (first === undefined) this.#written.set(key, place);
    else scope.sink.report({ ...place, kind: "duplicate", word: path.join("."), what: "property", first });
    return first === undefined;
  }

  #change(line: Line, route: Route, change: Change): void {
    const { axle, rest, side } = route;
    if (axle === undefined) {
      this.#tree = { ...this.#tree, block: changeAt(this.#tree.block, rest, 0, change) };
      return;
    }
    const left = startOf(this.#tree, route, "left");
    const right = startOf(this.#tree, route, "right");
    if (left === undefined || right === undefined) return;
    if (side !== undefined && !this.#hasSides(route)) return reportNoSides(line, side, rest[0] ?? "");
    const newLeft = side === "right" ? left : changeAt(left, rest, 0, change);
    const isShared = left === right && side === undefined;
    const newRight = isShared ? newLeft : side === "left" ? right : changeAt(right, rest, 0, change);
    this.#tree = withAxle(this.#tree, axle, newLeft, newRight);
  }

  /** Only what exists once a side can be changed on one side. */
  #hasSides(route: Route): boolean {
    const block = startOf(this.#tree, route, route.side ?? "left");
    if (block === undefined) return false;
    const step = stepIn(block, route.rest, 0);
    const first = step && block.statements[step.index];
    if (first !== undefined) return mayDiffer(first, route.rest[step?.used ?? 1]);
    // What is not known at all is told as that.
    const word = findWord("axle", route.rest[0] ?? "");
    return word === undefined || word.role === "element" || passedOverFor(block, route.rest, 0) !== undefined;
  }
}

/** `push-rod by -1 turn` as the `push-rod.longer by -1 turn` that it means. */
function insideAdjuster(line: Line, { statement, parent }: Found): Line | undefined {
  if (plainWord(line.items[0]) !== "by") return undefined;
  const word = adjustedInside(statement, parent.concept)?.word;
  if (word === undefined) return undefined;
  const { start, end } = line.segments.at(-1) ?? line.raw.head;
  return {
    ...line,
    path: [...line.path, word],
    segments: [...line.segments, { kind: "name", text: word, start, end }],
  };
}

/** Blocks of structure and elements are gone through line by line; every other block is replaced whole. */
function isGroup({ statement, parent }: Found, { raw, items }: Line): boolean {
  if (raw.block === undefined || statement.block === undefined) return false;
  const word = findWord(parent.concept, statement.word);
  return word?.role === "element" || (word?.role === "structure" && items.length === 0);
}

/** `front.third` and nothing behind it: an element or a part of it, of which nothing is said yet. */
function reportUnfinished({ raw, path, segments, scope }: Line, example = "…"): void {
  const name = segments.map(({ text }) => text).join(".");
  const detail = `Nothing is said of ${name} yet: go on with a dot and what of it changes.`;
  const expected = [`${name}.${example} VALUE`];
  scope.sink.report({ ...at(scope.uri, raw.head), kind: "wrong-form", word: path.join("."), expected, detail });
}
