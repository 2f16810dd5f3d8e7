/**
 * What an operand of `compare` names: `PATH`, `PATH#SETUP`, `REV:PATH`, `REV:PATH#SETUP`. A path that is there as it is
 * written wins, since names of files may hold both signs.
 */
import { existsSync } from "node:fs";

export interface Operand {
  /** As it was typed, for messages. */
  readonly typed: string;
  readonly path: string;
  /** Undefined for the work tree. */
  readonly revision: string | undefined;
  readonly setup: string | undefined;
}

export function operandOf(typed: string): Operand {
  if (existsSync(typed)) return { typed, path: typed, revision: undefined, setup: undefined };
  const [before, setup] = parted(typed, typed.lastIndexOf("#"));
  if (setup !== undefined && existsSync(before)) return { typed, path: before, revision: undefined, setup };
  const [revision, path] = parted(before, colonIn(before));
  return path === undefined ? { typed, path: before, revision: undefined, setup } : { typed, path, revision, setup };
}

/** The colon behind a revision: not one behind a drive's letter. */
function colonIn(text: string): number {
  const at = text.indexOf(":");
  return /^[A-Za-z]:[\\/]/.test(text) ? -1 : at;
}

const parted = (text: string, at: number): readonly [before: string, after: string | undefined] =>
  at <= 0 || at === text.length - 1 ? [text, undefined] : [text.slice(0, at), text.slice(at + 1)];
