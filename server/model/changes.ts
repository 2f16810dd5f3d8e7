/** What an override line does at the end of its path: sets, adds, adjusts or removes. */
import type { Item, Name, Statement } from "../../grammar/index.js";
import { findWord, wordsIn } from "../../grammar/vocabulary/index.js";
import type { Word } from "../../grammar/vocabulary/word.js";
import { asDrawn } from "./adjuster.js";
import type { ResolvedValue } from "./car.js";
import type { Change } from "./edit.js";
import { expandFit } from "./fit.js";
import { plainWord } from "./forms.js";
import { mention } from "./mentions.js";
import type { Side } from "./origin.js";
import type { Reading } from "./read-block.js";
import { isSameStatement, isSameValue } from "./same.js";
import type { Scope } from "./scope.js";
import { isCornerElement } from "./sides.js";
import { at } from "./sink.js";
import { stepsFrom, type Found, type Route } from "./steps.js";
import { withAdded, withoutStatement, withStatement, type TreeBlock, type TreeStatement } from "./tree.js";
import { writeStatement } from "./write.js";

/** An override with its path from the car on, and the items that stand behind the path. */
export interface Line {
  readonly raw: Statement;
  readonly path: readonly string[];
  /** The part of the path that is written in the line itself. */
  readonly segments: readonly Name[];
  readonly items: readonly Item[];
  readonly scope: Scope;
}

/** Told at the step that finds nothing; where that is not written in the line, at its head. */
export function reportMiss(line: Line, failing: string, candidates: readonly string[]): void {
  const { raw, path, segments, scope } = line;
  const place = at(scope.uri, segments.find((segment) => segment.text === failing) ?? raw.head);
  scope.sink.report({ ...place, kind: "override-without-target", path: path.join("."), failing, candidates });
}

/** A line for one side of what stands once for both. */
export function reportNoSides({ raw, path, segments, scope }: Line, side: Side, thing: string): void {
  const place = at(scope.uri, segments.find((segment) => segment.text === side) ?? raw.head);
  scope.sink.report({ ...place, kind: "no-sides", path: path.join("."), side, thing });
}

abstract class Followed implements Change {
  protected readonly line: Line;
  protected readonly route: Route;

  constructor(line: Line, route: Route) {
    this.line = line;
    this.route = route;
  }

  abstract replace(parent: TreeBlock, index: number, target: TreeStatement): TreeBlock;
  abstract add(parent: TreeBlock, word: Word): TreeBlock;

  miss(block: TreeBlock, segment: number): void {
    const { rest, skipped } = this.route;
    const isLast = segment === rest.length - 1;
    reportMiss(this.line, this.line.path[skipped + segment] ?? "", stepsFrom(block, isLast));
  }

  pass({ statement, parent, segment }: Found): void {
    mention(this.line, { statement, parent, segment: segment + this.route.skipped });
  }
}

interface Outcome {
  readonly before: TreeStatement;
  readonly after: TreeStatement;
}

export class Setting extends Followed {
  readonly #reading: Reading;
  readonly #outcomes: Outcome[] = [];

  constructor(line: Line, route: Route, reading: Reading) {
    super(line, route);
    this.#reading = reading;
  }

  replace(parent: TreeBlock, index: number, before: TreeStatement): TreeBlock {
    const word = findWord(parent.concept, before.word);
    if (word?.times === "many" && plainWord(this.line.items[0]) !== "by") return this.#amongMany(parent, word);
    return this.#replaced(parent, index, before);
  }

  #replaced(parent: TreeBlock, index: number, before: TreeStatement): TreeBlock {
    const word = findWord(parent.concept, before.word);
    const after = this.#write(parent, word, before);
    if (after === undefined) return parent;
    if (word?.role === "element" && this.route.side !== undefined && !isSameClaim(before, after)) {
      this.#reportClaim("What an element is for holds for both sides.");
      return parent;
    }
    this.#outcomes.push({ before, after });
    return this.#fitted(withStatement(parent, index, after));
  }

  add(parent: TreeBlock, word: Word): TreeBlock {
    if (plainWord(this.line.items[0]) === "by") {
      if (word.adjusts === true) return this.#adjustDrawn(parent, word);
      reportMiss(this.line, this.line.path.at(-1) ?? "", stepsFrom(parent, false));
      return parent;
    }
    if (word.times === "many") return this.#amongMany(parent, word);
    const after = this.#write(parent, word, undefined);
    if (after !== undefined && this.route.side !== undefined && word.role === "element" && !isCornerElement(after)) {
      this.#reportClaim(`An element stands on one side by itself only where it is for corner.`);
      return parent;
    }
    return this.#added(parent, after);
  }

  #reportClaim(why: string): void {
    const { raw, scope } = this.line;
    const detail = `${why} Write the line without "${this.route.side}".`;
    scope.sink.report({
      ...at(scope.uri, raw.head),
      kind: "wrong-form",
      word: this.line.path.at(-1) ?? "",
      expected: [],
      detail,
    });
  }

  /** The path ends at a word that may stand many times: which of the lines is meant, what it speaks of says. */
  #amongMany(parent: TreeBlock, word: Word): TreeBlock {
    const after = this.#write(parent, word, undefined);
    const index = after === undefined ? -1 : parent.statements.findIndex((other) => isSameMatter(other, after));
    const before = parent.statements[index];
    return before === undefined ? this.#added(parent, after) : this.#replaced(parent, index, before);
  }

  #added(parent: TreeBlock, after: TreeStatement | undefined): TreeBlock {
    return after === undefined ? parent : this.#fitted(withAdded(parent, after));
  }

  #adjustDrawn(parent: TreeBlock, word: Word): TreeBlock {
    const before = asDrawn(word, parent);
    const after = this.#write(parent, word, before);
    if (after === undefined) return parent;
    this.#outcomes.push({ before, after });
    return withAdded(parent, after);
  }

  /** A single word is not a path that went wrong but a word that is not known. */
  override miss(block: TreeBlock, segment: number): void {
    const { segments, path, scope } = this.line;
    const [only, more] = segments;
    if (only === undefined || more !== undefined) return super.miss(block, segment);
    const isOutermost = path.length === 1;
    const own = isOutermost ? wordsIn("setup").map((word) => word.word) : [];
    const concept = isOutermost ? "setup" : block.concept;
    const candidates = [...new Set([...own, ...stepsFrom(block, true)])];
    scope.sink.report({ ...at(scope.uri, only), kind: "unknown-word", word: only.text, concept, candidates });
  }

  checkNeedless(why: "same-value" | "mirror-image"): void {
    const { raw, path, scope } = this.line;
    const [first] = this.#outcomes;
    if (first === undefined || !this.#outcomes.every(isNeedless)) return;
    const inherited = first.before.values.find((value) => "chain" in value)?.origin ?? first.before.origin;
    scope.sink.report({ ...at(scope.uri, raw), kind: "needless-override", path: path.join("."), inherited, why });
  }

  #write(parent: TreeBlock, word: Word | undefined, target: TreeStatement | undefined): TreeStatement | undefined {
    return (
      word &&
      writeStatement(this.line, { word, parent, target, isMirrored: this.route.side === "right" }, this.#reading)
    );
  }

  /** A freshly fitted part comes with its own lines. */
  #fitted(block: TreeBlock): TreeBlock {
    const isFit = this.line.path.at(-1) === "fit";
    return isFit ? expandFit(block, this.#reading.parts, this.line.scope.sink, "anew") : block;
  }
}

const isSameClaim = (a: TreeStatement, b: TreeStatement): boolean => {
  const claim = ({ values }: TreeStatement) => values.find(({ kind }) => kind === "modes");
  const [one, other] = [claim(a), claim(b)];
  return one === undefined || other === undefined ? one === other : isSameValue(one, other);
};

function isNeedless({ before, after }: Outcome): boolean {
  return after.formula === undefined && before.formula === undefined && isSameStatement(before, after);
}

/** Of words that may stand many times: the same expectation, the ratio of the same mode. */
function isSameMatter(a: TreeStatement, b: TreeStatement): boolean {
  return a.word === b.word && matterOf(a.values) === matterOf(b.values);
}

const matterOf = (values: readonly ResolvedValue[]): string =>
  values
    .map((value) => (value.kind === "path" ? value.segments.join(".") : value.kind === "word" ? value.text : ""))
    .join(" ")
    .trim();

export class Removal extends Followed {
  replace(parent: TreeBlock, index: number, target: TreeStatement): TreeBlock {
    const word = findWord(parent.concept, target.word);
    const isPart = word?.role === "structure";
    if (word?.needed === true || isPart) {
      const why = isPart ? "is part of the car as it is drawn" : "cannot be done without";
      reportStays(this.line, `"${this.line.path.join(".")}" ${why}, and is not taken out.`);
      return parent;
    }
    return withoutStatement(parent, index);
  }

  add(parent: TreeBlock): TreeBlock {
    reportMiss(this.line, this.line.path.at(-1) ?? "", stepsFrom(parent, false));
    return parent;
  }
}

/** What a `remove` line cannot take out. */
export function reportStays({ raw, scope }: Line, detail: string): void {
  scope.sink.report({ ...at(scope.uri, raw), kind: "wrong-form", word: "remove", expected: [], detail });
}
