/** The example programs of the language page. */
import { readdirSync, readFileSync } from "node:fs";

const folder = new URL("./programs/", import.meta.url);

export const programs: readonly (readonly [name: string, text: string])[] = readdirSync(folder)
  .sort()
  .map((name) => [name, readFileSync(new URL(name, folder), "utf8")]);

export function program(name: string): string {
  const found = programs.find(([file]) => file === name);
  if (found === undefined) throw new Error(`no program ${name}`);
  return found[1];
}
