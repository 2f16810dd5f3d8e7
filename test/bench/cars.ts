/** Texts of the sizes that the bench asks for, made from the sample car. */
import { readFileSync } from "node:fs";

/** A car of about 300 lines: the sample car with its parts in the same file. */
export function carOf300Lines(): string {
  const parts = readFileSync("samples/quill/parts.crank", "utf8");
  const car = readFileSync("samples/quill/quill.crank", "utf8").replace(/^use .*$/m, "");
  return padded(`${parts}\n${car}`, 300);
}

/** The same car with set-ups from it until there are 3,000 lines: each is resolved, computed and checked. */
export function carOf3000Lines(): string {
  const lines = [carOf300Lines()];
  for (let index = 0; lineCount(lines) < 3000; index += 1) lines.push(setup(index));
  return lines.join("\n");
}

function setup(index: number): string {
  return [
    "",
    `setup run-${index} from quill {`,
    `  ## Run ${index}: a step further down on the heave springs.`,
    `  front.third.rate ${54 - (index % 7)} N/mm`,
    `  rear.third.rate ${74 - (index % 5)} N/mm`,
    `  front.bar.blade.position ${1 + (index % 5 === 2 ? 3 : index % 5)}`,
    `  case hairpin { speed ${60 + (index % 9)} km/h, lateral 1.2 g }`,
    "}",
  ].join("\n");
}

const lineCount = (lines: readonly string[]): number => lines.join("\n").split("\n").length;

function padded(text: string, lines: number): string {
  const missing = Math.max(0, lines - text.split("\n").length);
  return `${Array.from({ length: missing }, (_, index) => `# page of the club's log, line ${index + 1}`).join("\n")}\n${text}`;
}
