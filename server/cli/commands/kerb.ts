/** `bellcrank kerb`: one car or set-up over the kerbs that are written for it, in the time domain. */
import { type Command, Option } from "commander";
import { type KerbFound, kerbPage } from "../../views/kerb-page.js";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { type Asked, carCommand } from "../car-command.js";
import type { Ends } from "../ends.js";
import { kerbCsv, kerbJson } from "../output/kerb.js";
import { pageText } from "../output/rates-text.js";
import { UsageError } from "../usage-error.js";

type Car = Parameters<typeof kerbPage>[0];

const outputs = {
  text: (car: Car, found: readonly KerbFound[]) => pageText(kerbPage(car, found)),
  json: kerbJson,
  csv: kerbCsv,
  markdown: (car: Car, found: readonly KerbFound[]) => pageMarkdown(kerbPage(car, found)),
} as const;

export function kerbCommand(root: Command, ends: Ends): void {
  const written = (format: keyof typeof outputs) => (car: Car, asked: Asked) =>
    outputs[format](car, kerbsAsked(car, asked));
  carCommand(root, ends, {
    name: "kerb",
    description: "Peak loads, travel, stops and time off the ground on the car's kerbs; csv is the course over time.",
    example: "bellcrank kerb samples/dunlin/dunlin.crank --kerb quarry-bend",
    options: [new Option("--kerb <name>", "one of them, else all")],
    outputs: { text: written("text"), json: written("json"), csv: written("csv"), markdown: written("markdown") },
  });
}

function kerbsAsked({ kerbs, model }: Car, asked: Asked): readonly KerbFound[] {
  const own = model.setup ?? model.name;
  if (kerbs.names.length === 0)
    throw new UsageError(
      `${own} has no kerb: write one, such as kerb chicane { height 40 mm, length 600 mm, speed 90 km/h }`,
    );
  const name = asked["kerb"];
  const names = name === undefined ? kerbs.names : [name];
  return names.map((one) => {
    const found = kerbs.at(one);
    if (found === undefined) throw new UsageError(`${own} has no kerb ${one}; it has ${kerbs.names.join(", ")}`);
    return [one, found] as const;
  });
}
