/** Whether two resolved statements say the same, wherever they are written and in whatever unit. */
import type { ResolvedBlock, ResolvedRow, ResolvedStatement, ResolvedValue } from "./car.js";

/** Values in SI that differ by less than this share of themselves are the same number in two units. */
const roundOff = 1e-12;

export function isSameNumber(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) <= roundOff * Math.max(Math.abs(a), Math.abs(b));
}

export function isSameStatement(a: ResolvedStatement, b: ResolvedStatement): boolean {
  if (a === b) return true;
  return (
    a.word === b.word &&
    a.name?.text === b.name?.text &&
    a.form === b.form &&
    isSameList(a.values, b.values, isSameValue) &&
    isSameBlock(a.block, b.block)
  );
}

export function isSameBlock(a: ResolvedBlock | undefined, b: ResolvedBlock | undefined): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined || a.concept !== b.concept) return false;
  return isSameSet(a.statements, b.statements) && isSameList(a.rows, b.rows, isSameRow);
}

/** The order of the lines of a block says nothing. */
function isSameSet(a: readonly ResolvedStatement[], b: readonly ResolvedStatement[]): boolean {
  if (a.length !== b.length) return false;
  return a.every((statement, index) => {
    const there = b[index];
    if (there !== undefined && isSameStatement(statement, there)) return true;
    return b.some((other) => isSameStatement(statement, other));
  });
}

const isSameRow = (a: ResolvedRow, b: ResolvedRow): boolean =>
  isSameValue(a.key, b.key) && isSameValue(a.value, b.value);

function isSameList<T>(a: readonly T[], b: readonly T[], isSame: (one: T, other: T) => boolean): boolean {
  return a === b || (a.length === b.length && a.every((one, index) => isSame(one, b[index] as T)));
}

export function isSameValue(a: ResolvedValue, b: ResolvedValue): boolean {
  switch (a.kind) {
    case "number":
      return b.kind === "number" && a.dimension === b.dimension && isSameNumber(a.value, b.value);
    case "point":
      return b.kind === "point" && isSameList(a.value, b.value, isSameNumber);
    case "range":
      return b.kind === "range" && isSameList<number>(a.value, b.value, isSameNumber);
    case "word":
    case "text":
      return b.kind === a.kind && a.text === b.text;
    case "path":
      return b.kind === "path" && isSameList(a.segments, b.segments, Object.is);
    case "attachment":
      return b.kind === "attachment" && isSameAttachment(a, b);
    case "modes":
      return b.kind === "modes" && isSameList(a.modes, b.modes, (one, other) => one.text === other.text);
  }
}

type AttachmentValue = Extract<ResolvedValue, { kind: "attachment" }>;

function isSameAttachment(a: AttachmentValue, b: AttachmentValue): boolean {
  if (!isSameList(a.segments, b.segments, Object.is)) return false;
  if (a.point === undefined || b.point === undefined) return a.point === b.point;
  return isSameList(a.point.value, b.point.value, isSameNumber);
}
