/** Values and what they replaced: the chain that hover tells, oldest first. */
import type { ResolvedValue } from "./car.js";
import type { Origin } from "./origin.js";
import type { TreeStatement } from "./tree.js";

/** An empty place is where something would stand that is not written. */
export const isWritten = ({ start, end }: Origin): boolean => end > start;

/** The chain of what replaces this. */
export function chainAfter({ chain, origin }: { readonly chain: readonly Origin[]; readonly origin: Origin }) {
  return isWritten(origin) ? [...chain, origin] : chain;
}

/** The statement with the provenance of the one that it replaced, value by value. */
export function inherits(statement: TreeStatement, from: TreeStatement): TreeStatement {
  const values = statement.values.map((value, index) => withChain(value, from.values[index]));
  return { ...statement, values, chain: [...from.chain, from.origin], root: from.root ?? statement.root };
}

export function withChain(value: ResolvedValue, from: ResolvedValue | undefined): ResolvedValue {
  if (!("chain" in value) || from === undefined || !("chain" in from) || value === from) return value;
  return { ...value, chain: [...from.chain, from.origin] };
}
