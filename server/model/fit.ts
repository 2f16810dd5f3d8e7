/**
 * `fit PART`: the part's own lines in place of the element's block of that kind (`torsion-bar` in a
 * spring) or among its lines (`valving` in a damper), and the element's own figures over the part's.
 */
import { findWord, opensAt, wordsIn } from "../../grammar/vocabulary/index.js";
import type { Concept, Word } from "../../grammar/vocabulary/word.js";
import type { ResolvedValue } from "./car.js";
import type { Origin } from "./origin.js";
import { inherits } from "./provenance.js";
import { isSameStatement } from "./same.js";
import type { Named, Sink } from "./sink.js";
import { wordIn, type TreeBlock, type TreeStatement } from "./tree.js";

export interface Part {
  readonly word: Word;
  readonly name: string;
  readonly named: Named;
  readonly block: TreeBlock;
}

export interface Parts {
  /** By name, from the file and what it uses. */
  find(name: string): Part | undefined;
  /** Names of the parts that fit into an element of this kind. */
  fitting(concept: Concept): readonly string[];
  /** Whether a word is that of a part, so that its block may stand over a fitted one. */
  isPartWord(word: string): boolean;
}

/**
 * `below`: what the element says itself holds over the part; `anew`: the part replaces what was
 * fitted of its kind before, with everything that was said about it. A bar keeps its tube when it gets other blades.
 */
export function expandFit(block: TreeBlock, parts: Parts, sink: Sink, how: "below" | "anew"): TreeBlock {
  const fit = wordIn(block, "fit");
  const [wanted] = fit?.values ?? [];
  if (fit === undefined || wanted?.kind !== "path") return block;
  const part = partFor(block.concept, wanted, parts, sink);
  if (part === undefined) return block;
  const brought = linesOf(part, block.concept);
  const put = new Set(how === "anew" ? brought.flatMap((line) => insteadOf(line.word, block.concept)) : []);
  const isGone = ({ word, part: from }: TreeStatement): boolean =>
    put.has(word) || (from !== undefined && parts.find(from)?.word === part.word);
  const own = how === "below" ? block.statements : block.statements.filter((statement) => !isGone(statement));
  const words = new Map(brought.map((statement) => [statement.word, statement]));
  const merged = own.map((statement) => {
    const under = words.get(statement.word);
    if (under === undefined) return statement;
    words.delete(statement.word);
    return over(under, statement, part, sink);
  });
  return { ...block, statements: [...merged, ...words.values()] };
}

function partFor(
  concept: Concept,
  wanted: Extract<ResolvedValue, { kind: "path" }>,
  parts: Parts,
  sink: Sink,
): Part | undefined {
  const name = wanted.segments.join(".");
  const part = parts.find(name);
  if (part === undefined) {
    sink.report({ ...wanted.origin, kind: "unknown-name", name, target: "part", candidates: parts.fitting(concept) });
    return undefined;
  }
  sink.refer(part.named, wanted.origin);
  if (part.word.fits?.into.includes(concept) === true) return part;
  const article = /^[aeiou]/.test(part.word.word) ? "an" : "a";
  const detail = `${name} is ${article} ${part.word.word}, which goes into ${part.word.fits?.into.join(" or ") ?? "nothing"}.`;
  const expected = parts
    .fitting(concept)
    .slice(0, 3)
    .map((other) => `fit ${other}`);
  sink.report({ ...wanted.origin, kind: "wrong-form", word: "fit", expected, detail });
  return undefined;
}

/**
 * Words of an element that say the same thing as `word` in another way (a rate, a coil by its wire, a curve): they spare one
 * another in the vocabulary, and go when a part brings one of them. A direction of a law goes with its other one.
 */
function insteadOf(word: string, concept: Concept): readonly string[] {
  const words = wordsIn(concept);
  const ways = words.filter((known) => known.word === word || known.unless?.includes(word) === true);
  const said = new Set(
    [word, ...ways.flatMap((known) => [known.word, ...(known.unless ?? [])])].filter((way) => way !== "fit"),
  );
  const opened = new Set(words.filter((known) => said.has(known.word)).flatMap((known) => known.opens ?? []));
  return [...said, ...words.filter(({ opens }) => opens !== undefined && opened.has(opens)).map((known) => known.word)];
}

const lines = new WeakMap<Part, Map<Concept, readonly TreeStatement[]>>();

/** What the part puts into an element: made once, so that elements with one part share it. */
function linesOf(part: Part, concept: Concept): readonly TreeStatement[] {
  let byConcept = lines.get(part);
  if (byConcept === undefined) lines.set(part, (byConcept = new Map()));
  let found = byConcept.get(concept);
  if (found === undefined) byConcept.set(concept, (found = makeLines(part, concept)));
  return found;
}

function makeLines(part: Part, concept: Concept): readonly TreeStatement[] {
  if (part.word.fits?.as === "contents") {
    return known(part.block, concept).map((statement) => ({ ...statement, part: part.name }));
  }
  const word = findWord(concept, part.word.word);
  const opens = word && opensAt(word, 0);
  if (word === undefined || opens === undefined) return [];
  const block = { ...part.block, concept: opens, statements: known(part.block, opens) };
  return [lineWith(word, part, block)];
}

/** Lines of the part that mean something in the element; what is for the shelf (`stock`) stays there. */
const known = (block: TreeBlock, concept: Concept): readonly TreeStatement[] =>
  block.statements.filter((statement) => findWord(concept, statement.word) !== undefined);

function lineWith(word: Word, part: Part, block: TreeBlock): TreeStatement {
  const origin: Origin = { ...block.origin, start: part.named.declaration.start };
  return {
    word: word.word,
    name: undefined,
    form: 0,
    values: [],
    block,
    origin,
    wordOrigin: part.named.declaration,
    chain: [],
    notes: [],
    root: undefined,
    formula: undefined,
    part: part.name,
  };
}

/** The element's own line over the one that the part brings: figures inside one by one. */
function over(under: TreeStatement, own: TreeStatement, part: Part, sink: Sink): TreeStatement {
  const chain = [...under.chain, under.origin];
  if (own.block === undefined || under.block === undefined || part.word.fits?.as === "contents") {
    if (isSameStatement(under, own)) reportNeedless(own, under, sink);
    return { ...own, chain };
  }
  const statements = under.block.statements.slice();
  for (const line of own.block.statements) {
    const index = statements.findIndex((other) => other.word === line.word);
    const below = statements[index];
    if (below === undefined) statements.push(line);
    else {
      if (isSameStatement(below, line)) reportNeedless(line, below, sink);
      statements[index] = inherits(line, below);
    }
  }
  return { ...own, block: { ...own.block, statements, origin: own.block.origin }, chain, part: part.name };
}

function reportNeedless(own: TreeStatement, under: TreeStatement, sink: Sink): void {
  sink.report({ ...own.origin, kind: "needless-override", path: own.word, inherited: under.origin, why: "same-value" });
}
