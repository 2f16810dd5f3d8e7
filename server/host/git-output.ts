/** What `git` prints with `-z` and the like, as data. */
import { isUtf8 } from "node:buffer";

export interface GitChange {
  readonly status: "added" | "deleted" | "changed" | "renamed";
  /** Relative to the top of the repository, with forward slashes. */
  readonly path: string;
  /** Where it was before; the same path unless it was renamed. */
  readonly oldPath: string;
}

export interface GitCommit {
  readonly hash: string;
  /** The first one that it grew from; undefined for the very first. */
  readonly parent: string | undefined;
  /** ISO 8601, of the author. */
  readonly date: string;
  readonly author: string;
  readonly subject: string;
  /** What the followed file was called then, and in the commit before. */
  readonly path: string;
  readonly oldPath: string;
  /** Files of the language and tables that it touched, under their names before and after. */
  readonly touched: readonly string[];
}

export const zeroParted = (text: string): readonly string[] => text.split("\0").filter((part) => part !== "");

const statusOf: Readonly<Record<string, GitChange["status"]>> = { A: "added", C: "added", D: "deleted", R: "renamed" };

/** `M path`, `A path`, `R087 old new`, each a token. */
export function changesIn(tokens: readonly string[]): readonly GitChange[] {
  const found: GitChange[] = [];
  for (let i = 0; i < tokens.length; ) {
    const letter = tokens[i]?.charAt(0) ?? "";
    const hasTwo = letter === "R" || letter === "C";
    const oldPath = tokens[i + 1] ?? "";
    const path = hasTwo ? (tokens[i + 2] ?? "") : oldPath;
    found.push({ status: statusOf[letter] ?? "changed", path, oldPath: letter === "C" ? path : oldPath });
    i += hasTwo ? 3 : 2;
  }
  return found;
}

/** Each commit behind a mark of its own: hash, parents, date, author, subject, then what it did to which files. */
export function commitsIn(listed: string, newest: string): readonly GitCommit[] {
  let path = newest;
  return listed.split(MARK).flatMap((part) => {
    const [hash = "", parents = "", date = "", author = "", subject = "", ...rest] = part.split("\0");
    if (hash === "") return [];
    const changes = changesIn(rest.map((token) => token.replace(/^\n/, "")).filter((token) => token !== ""));
    const oldPath = changes.find((change) => change.status === "renamed" && change.path === path)?.oldPath ?? path;
    const touched = changes.flatMap((change) => [change.path, change.oldPath]);
    const commit = { hash, parent: parents.split(" ")[0] || undefined, date, author, subject, path, oldPath, touched };
    path = oldPath;
    return [commit];
  });
}

/** No subject of a commit holds it. */
const MARK = "\u0001";

/** `hash blob size`, the bytes, a line end: in the order in which they were asked for. */
export function blobsIn(bytes: Buffer, asked: readonly string[], most: number): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  let at = 0;
  for (const path of asked) {
    const end = bytes.indexOf(0x0a, at);
    const [, type, size] = bytes.toString("utf8", at, end).split(" ");
    at = end + 1;
    if (size === undefined || !/^\d+$/.test(size)) continue;
    const content = bytes.subarray(at, at + Number(size));
    if (type === "blob" && content.length <= most && isUtf8(content)) found.set(path, content.toString("utf8"));
    at += Number(size) + 1;
  }
  return found;
}
