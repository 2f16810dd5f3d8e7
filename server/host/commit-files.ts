/** Reads the files of one commit, as `Disk` reads those of the work tree. */
import { isAbsolute, relative, sep } from "node:path";
import { URI } from "vscode-uri";
import type { Host } from "../snapshot/workspace.js";
import type { Repository } from "./git.js";

/** The files of a commit as a workspace reads them; addresses are those of the work tree, so that places can be shown there. */
export class CommitFiles implements Host {
  readonly #repository: Repository;
  readonly #commit: string;
  readonly #known = new Map<string, { readonly text: string }>();

  constructor(repository: Repository, commit: string) {
    this.#repository = repository;
    this.#commit = commit;
  }

  /** Reads many files at once, where they will all be asked for. */
  prepare(paths: readonly string[]): void {
    for (const [path, text] of this.#repository.readAll(this.#commit, paths))
      this.#known.set(this.#repository.uriOf(path), { text });
  }

  read(uri: string): ReturnType<Host["read"]> {
    const known = this.#known.get(uri);
    if (known !== undefined) return known;
    const parsed = URI.parse(uri);
    const way = relative(this.#repository.top, parsed.fsPath);
    if (parsed.scheme !== "file" || way.startsWith("..") || isAbsolute(way)) return { missing: "outside" };
    const read = this.#repository.read(this.#commit, way.split(sep).join("/"));
    if ("text" in read) return read;
    return { missing: read.missing === "too-large" ? "not-text" : read.missing };
  }
}
