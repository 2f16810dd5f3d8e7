/** The linkage of one side from its block: in space, planar, by ratios, or incomplete with what is missing. */
import type { CornerModel, PlanarCorner, Rod, RodCarrier, RockerModel, Wishbone } from "./car.js";
import { numberIn, pointOf } from "./given.js";
import type { Given, Origin, Side } from "./origin.js";
import { wordIn, type TreeBlock, type TreeStatement } from "./tree.js";

/** `axle` is the axle's block for this side; `fallback` the place to name where no linkage is written. */
export function cornerOf(axle: TreeBlock, side: Side, fallback: Origin): CornerModel {
  const linkage = wordIn(axle, "linkage");
  if (linkage === undefined) return { kind: "incomplete", missing: ["linkage"], origin: fallback };
  const { block, origin } = linkage;
  if (block === undefined) {
    return linkage.form === 2 ? { kind: "ratio", origin } : { kind: "incomplete", missing: ["linkage"], origin };
  }
  const parts = new LinkageParts(block, side);
  const whole = block.concept === "linkage-planar" ? planar(parts, origin) : hardpoints(parts, origin);
  return parts.missing.length === 0 ? whole() : { kind: "incomplete", missing: parts.missing, origin };
}

/** Collects what a linkage lacks while its parts are taken out. */
class LinkageParts {
  readonly missing: string[] = [];
  readonly block: TreeBlock;
  readonly side: Side;

  constructor(block: TreeBlock, side: Side) {
    this.block = block;
    this.side = side;
  }

  /** A part that the linkage cannot do without. */
  part(word: string): TreeBlock | undefined {
    const statement = wordIn(this.block, word);
    if (statement?.block === undefined) this.missing.push(word);
    return statement?.block;
  }

  /** A point of a part; told as missing where the part is there and the point is not. */
  point(part: string, block: TreeBlock | undefined, word: string): Given<never> {
    const point = pointOf(wordIn(block, word), this.side);
    if (block !== undefined && point === undefined) this.missing.push(`${part}.${word}`);
    return point as Given<never>;
  }

  rod(): TreeStatement | undefined {
    return wordIn(this.block, "push-rod") ?? wordIn(this.block, "pull-rod");
  }
}

function hardpoints(parts: LinkageParts, origin: Origin): () => CornerModel {
  const lower = wishbone(parts, "lower-wishbone");
  const upper = wishbone(parts, "upper-wishbone");
  const track = parts.part("track-rod");
  const trackRod = { inner: parts.point("track-rod", track, "inner"), outer: parts.point("track-rod", track, "outer") };
  const rod = rodOf(parts) as Rod | undefined;
  const rocker = rockerOf(parts);
  return () => ({ kind: "hardpoints", origin, lower, upper, trackRod, rod, rocker });
}

function wishbone(parts: LinkageParts, word: string): Wishbone {
  const block = parts.part(word);
  return {
    fore: parts.point(word, block, "fore"),
    aft: parts.point(word, block, "aft"),
    outer: parts.point(word, block, "outer"),
  };
}

function rodOf(parts: LinkageParts): Rod | PlanarCorner["rod"] {
  const statement = parts.rod();
  if (statement === undefined) return undefined;
  const kind = statement.word === "pull-rod" ? "pull-rod" : "push-rod";
  const on = statement.values.find((value) => value.kind === "word");
  if (on === undefined) parts.missing.push(`${kind}.on`);
  const { block } = statement;
  if (block === undefined) parts.missing.push(kind);
  return {
    kind,
    on: (on?.kind === "word" ? on.text : "lower-wishbone") as RodCarrier,
    outer: parts.point(kind, block, "outer"),
    inner: parts.point(kind, block, "inner"),
    thread: numberIn(block, "thread"),
    longer: numberIn(block, "longer"),
    origin: statement.origin,
  };
}

function rockerOf(parts: LinkageParts): RockerModel | undefined {
  const statement = wordIn(parts.block, "rocker");
  if (statement === undefined) return undefined;
  const { block } = statement;
  if (block === undefined) parts.missing.push("rocker");
  const pivot = parts.point("rocker", block, "pivot");
  const axis = parts.point("rocker", block, "axis");
  return { pivot, axis, eyes: eyesOf(block, parts.side), origin: statement.origin };
}

function eyesOf(block: TreeBlock | undefined, side: Side): ReadonlyMap<string, Given<never>> {
  const eyes = new Map<string, Given<never>>();
  for (const statement of block?.statements ?? []) {
    const point = statement.word === "eye" ? pointOf(statement, side) : undefined;
    if (statement.name !== undefined && point !== undefined) eyes.set(statement.name.text, point as Given<never>);
  }
  return eyes;
}

function planar(parts: LinkageParts, origin: Origin): () => CornerModel {
  const joints = (word: string) => {
    const block = parts.part(word);
    return { inner: parts.point(word, block, "inner"), outer: parts.point(word, block, "outer") };
  };
  const lower = joints("lower-wishbone");
  const upper = joints("upper-wishbone");
  const rod = rodOf(parts) as PlanarCorner["rod"];
  const statement = wordIn(parts.block, "rocker");
  const pivot = statement && parts.point("rocker", statement.block, "pivot");
  const eyes = eyesOf(statement?.block, parts.side);
  const rocker = statement && pivot && { pivot, eyes, origin: statement.origin };
  if (statement !== undefined && statement.block === undefined) parts.missing.push("rocker");
  return () => ({ kind: "planar", origin, lower, upper, rod, rocker });
}
