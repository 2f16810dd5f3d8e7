/** The levers (or the tee) and the drop links of an anti-roll bar, each side from its own lines. */
import { attachmentOf, type Surroundings } from "./attachments.js";
import type { Attachment, ConnectionModel, Vec3 } from "./car.js";
import { checkLever } from "./geometry-check.js";
import { numberIn, pointIn } from "./given.js";
import type { Given, Side, Sides } from "./origin.js";
import { wordIn, type TreeBlock, type TreeStatement } from "./tree.js";

type BarModel = Extract<ConnectionModel, { kind: "bar" }>;
type TeeModel = Extract<ConnectionModel, { kind: "tee" }>;
type Lever = BarModel["levers"]["left"];

/** `element` is the bar as the left side has it. */
export function barOf(element: TreeStatement, line: TreeStatement, around: Surroundings): BarModel | undefined {
  const right = rightOf(element, around);
  const levers = { left: leverOn(element, "left", around), right: leverOn(right, "right", around) };
  const links = { left: linkOn(element, "left", around), right: linkOn(right, "right", around) };
  if (levers.left === undefined || levers.right === undefined) return undefined;
  if (links.left === undefined || links.right === undefined) return undefined;
  const both: Sides<Lever> = { left: levers.left, right: levers.right };
  return { kind: "bar", levers: both, ...linksOf(links.left, links.right), origin: line.origin };
}

/** A T-shaped bar: its stem as the left side has it, each end of the cross arm from its own lines. */
export function teeOf(element: TreeStatement, line: TreeStatement, around: Surroundings): TeeModel | undefined {
  const right = rightOf(element, around);
  const tee = wordIn(element.block, "tee")?.block;
  const [foot, head] = [pointIn(tee, "foot", "left"), pointIn(tee, "head", "left")];
  const end = { left: pointIn(tee, "end", "left"), right: pointIn(wordIn(right.block, "tee")?.block, "end", "right") };
  const links = { left: linkOn(element, "left", around), right: linkOn(right, "right", around) };
  if (foot === undefined || head === undefined || end.left === undefined || end.right === undefined) return undefined;
  if (links.left === undefined || links.right === undefined) return undefined;
  const ends = { left: end.left, right: end.right };
  return { kind: "tee", foot, head, ends, ...linksOf(links.left, links.right), origin: line.origin };
}

function rightOf(element: TreeStatement, around: Surroundings): TreeStatement {
  const same = (other: TreeStatement) => other.word === element.word && other.name?.text === element.name?.text;
  return around.axle?.blocks.right.statements.find(same) ?? element;
}

interface Link {
  /** Undefined where it is off. */
  readonly end: Attachment | undefined;
  readonly longer: Given | undefined;
}

const linksOf = (left: Link, right: Link): Pick<BarModel, "links" | "longer"> => ({
  links: { left: left.end, right: right.end },
  longer: { left: left.longer, right: right.longer },
});

function leverOn(element: TreeStatement, side: Side, around: Surroundings): Lever | undefined {
  const lever = leverOf(wordIn(element.block, "lever")?.block, side);
  checkLever(element, around.sink);
  return lever;
}

function linkOn(element: TreeStatement, side: Side, around: Surroundings): Link | undefined {
  const line = wordIn(element.block, "drop-link");
  if (line === undefined) {
    reportNoLink(element, around);
    return undefined;
  }
  const end = line.values.find((value) => value.kind === "attachment");
  if (end?.kind !== "attachment") return { end: undefined, longer: undefined };
  const link = attachmentOf(end, { ...around, side, word: "drop-link" });
  return link && { end: link, longer: numberIn(line.block, "longer") };
}

function leverOf(block: TreeBlock | undefined, side: Side): Lever | undefined {
  const pivot = pointIn(block, "pivot", side);
  const axis = pointIn(block, "axis", side);
  const end: Given<Vec3> | undefined = pointIn(block, "end", side);
  return pivot && axis && end && { pivot, axis, end };
}

function reportNoLink(element: TreeStatement, around: Surroundings): void {
  const { block, name } = element;
  if (block === undefined || name === undefined || block.broken?.has("drop-link") === true) return;
  around.sink.report({
    ...name.origin,
    kind: "missing-property",
    word: "drop-link",
    concept: block.concept,
    owner: `${element.word} ${name.text}`,
    starter: undefined,
    insertAt: block.origin.end - 1,
  });
}
