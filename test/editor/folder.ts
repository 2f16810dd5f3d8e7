/** A workspace folder of its own for a run: a copy of the sample for each check, so that none sees another's typing. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

export class Folder {
  readonly path: string;
  readonly #sample: string;
  readonly #parent = realpathSync(mkdtempSync(join(tmpdir(), "bellcrank-editor-")));

  /** `sample` is the folder of the sample car. */
  constructor(sample: string) {
    this.#sample = sample;
    // This name is what pictures show.
    this.path = join(this.#parent, "quarrow-bank");
    mkdirSync(this.path);
  }

  /** Copies the sample for this check and answers the path of its car. */
  car(check: string): string {
    cpSync(this.#sample, join(this.path, check), { recursive: true });
    return join(this.path, check, "quill.crank");
  }

  text(path: string): string {
    return readFileSync(path, "utf8");
  }

  remove(): void {
    rmSync(this.#parent, { recursive: true, force: true });
  }
}
