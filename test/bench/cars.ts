/** Texts of the sizes that the bench asks for, made from the sample car. */
import { readFileSync } from "node:fs";

/** A car of about 300 lines: the sample car with its parts in the same file. */
export function carOf300Lines(): string {
  const parts = readFileSync("samples/quill/parts.crank", "utf8");
  const car = readFileSync("samples/quill/quill.crank", "utf8").replace(/^use .*$/m, "");
  return padded(`${parts}\n${car}`, 300);
}

/** Ten such cars in one file, 3,000 lines: the club's whole line, each with its own name. */
export function carOf3000Lines(): string {
  const car = readFileSync("samples/quill/quill.crank", "utf8").replace(/^use .*$/m, "");
  const cars = Array.from({ length: 10 }, (_, index) => car.replace("car quill ", `car quill-${index} `));
  return padded(`${readFileSync("samples/quill/parts.crank", "utf8")}\n${cars.join("\n")}`, 3000);
}

function padded(text: string, lines: number): string {
  const missing = Math.max(0, lines - text.split("\n").length);
  return `${Array.from({ length: missing }, (_, index) => `# page of the club's log, line ${index + 1}`).join("\n")}\n${text}`;
}
