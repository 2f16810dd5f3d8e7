/** The levers and drop links of an anti-roll bar, each side from its own lines. */
import { attachmentOf, type Surroundings } from "./attachments.js";
import type { Attachment, ConnectionModel, Vec3 } from "./car.js";
import { checkLever } from "./geometry-check.js";
import { pointIn } from "./given.js";
import type { Given, Side, Sides } from "./origin.js";
import { wordIn, type TreeBlock, type TreeStatement } from "./tree.js";

type BarModel = Extract<ConnectionModel, { kind: "bar" }>;
type Lever = BarModel["levers"]["left"];

/** `element` is the bar as the left side has it. */
export function barOf(element: TreeStatement, line: TreeStatement, around: Surroundings): BarModel | undefined {
  const left = barSide(element, "left", around);
  const right = barSide(rightOf(element, around), "right", around);
  if (left === undefined || right === undefined) return undefined;
  const levers: Sides<Lever> = { left: left.lever, right: right.lever };
  return { kind: "bar", levers, links: { left: left.link, right: right.link }, origin: line.origin };
}

function rightOf(element: TreeStatement, around: Surroundings): TreeStatement {
  const same = (other: TreeStatement) => other.word === element.word && other.name?.text === element.name?.text;
  return around.axle?.blocks.right.statements.find(same) ?? element;
}

interface BarSide {
  readonly lever: Lever;
  readonly link: Attachment | undefined;
}

function barSide(element: TreeStatement, side: Side, around: Surroundings): BarSide | undefined {
  const lever = leverOf(wordIn(element.block, "lever")?.block, side);
  checkLever(element, around.sink);
  const line = wordIn(element.block, "drop-link");
  if (line === undefined) reportNoLink(element, around);
  const end = line?.values.find((value) => value.kind === "attachment");
  if (lever === undefined || line === undefined) return undefined;
  if (end?.kind !== "attachment") return { lever, link: undefined };
  const link = attachmentOf(end, { ...around, side, word: "drop-link" });
  return link && { lever, link };
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
