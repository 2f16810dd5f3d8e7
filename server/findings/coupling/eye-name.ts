/** The place of an eye's name in the text that joins an element to it (`third` in `left.rocker.third`). */
import type { Span } from "../../../grammar/index.js";
import type { Attachment } from "../../model/car.js";
import type { RuleContext } from "../context.js";

export function eyeNameIn(context: RuleContext, end: Extract<Attachment, { kind: "eye" }>): Span | undefined {
  const written = context.textOf(end.origin.uri)?.slice(end.origin.start, end.origin.end);
  const at = written?.lastIndexOf(`.${end.eye}`) ?? -1;
  if (at < 0) return undefined;
  const start = end.origin.start + at + 1;
  return { start, end: start + end.eye.length };
}
