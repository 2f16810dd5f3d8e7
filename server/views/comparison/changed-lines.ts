/** Which lines of a text are other than in its older version. */
import { diffLines } from "diff";

/** From 1; a text that was not there is all new. */
export function changedLines(old: string | undefined, now: string): ReadonlySet<number> {
  const found = new Set<number>();
  let line = 1;
  for (const { added, removed, count } of diffLines(old ?? "", now, { stripTrailingCr: true })) {
    if (removed) continue;
    if (added) for (let i = 0; i < count; i++) found.add(line + i);
    line += count;
  }
  return found;
}
