/**
 * The program that VS Code runs inside its extension host: every check, then the results into a file.
 * Bundled by run.ts; cannot be run where no desktop VS Code is to be had.
 */
import { writeFileSync } from "node:fs";
import { type Check, checks } from "../checks.js";
import { Folder } from "../folder.js";
import { ApiEditor } from "./api-editor.js";
import { RESULTS_FILE, type Result, SAMPLE_FOLDER } from "./results.js";

export async function run(): Promise<void> {
  const folder = new Folder(setting(SAMPLE_FOLDER));
  const results: Result[] = [];
  try {
    for (const check of checks) results.push(await outcome(check, folder));
  } finally {
    folder.remove();
  }
  writeFileSync(setting(RESULTS_FILE), JSON.stringify(results));
}

async function outcome(check: Check, folder: Folder): Promise<Result> {
  try {
    await check.run(new ApiEditor(), folder);
    return { name: check.name };
  } catch (error) {
    return { name: check.name, error: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

function setting(name: string): string {
  const value = process.env[name];
  if (value === undefined) throw new Error(`${name} is not set.`);
  return value;
}
