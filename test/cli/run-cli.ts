/** Runs the built command as a user would, in a folder of its own. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync, writeFileSync, mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface Workshop {
  readonly folder: string;
  run(...args: string[]): Ran;
  write(name: string, content: string | Buffer): void;
  removeFile(name: string): void;
  remove(): void;
}

/** A set-up of the sample car with a name mistyped. */
export const TYPO = 'use "../quill/quill.crank"\n\nsetup typo from quill {\n  front.thrid.rate 45 N/mm\n}\n';

const cli = resolve("dist/cli.js");

/** A folder with the sample cars in `quill/` and, in inches, `tern/`. */
export function openWorkshop(environment: NodeJS.ProcessEnv = {}): Workshop {
  const folder = mkdtempSync(join(tmpdir(), "work shop é "));
  for (const car of ["quill", "tern"]) cpSync(join("samples", car), join(folder, car), { recursive: true });
  return {
    folder,
    run: (...args) => runIn(folder, environment, args),
    write(name, content) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), content);
    },
    removeFile: (name) => rmSync(join(folder, name)),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** The same in a folder that is there already. */
export const runCli = (folder: string, ...args: string[]): Ran => runIn(folder, {}, args);

function runIn(folder: string, environment: NodeJS.ProcessEnv, args: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [cli, ...args], {
    cwd: folder,
    encoding: "utf8",
    env: { ...process.env, ...environment },
  });
  return { code: status, out: stdout, err: stderr };
}
