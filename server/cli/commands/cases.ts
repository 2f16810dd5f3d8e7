/** `bellcrank cases`: the equilibrium of one car or set-up in every load case, or curves over speed or lateral acceleration. */
import { type Command, Option } from "commander";
import { casesPage } from "../../views/cases-page.js";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { type Asked, carCommand } from "../car-command.js";
import type { Ends } from "../ends.js";
import { gridOf } from "../grid.js";
import { casesCsv } from "../output/cases-csv.js";
import { casesJson } from "../output/cases-json.js";
import { pageText } from "../output/rates-text.js";
import { sweepOutputs } from "../output/sweep.js";
import { UsageError } from "../usage-error.js";

type Car = Parameters<typeof casesPage>[0];

const outputs = {
  text: (car: Car) => pageText(casesPage(car)),
  json: casesJson,
  csv: casesCsv,
  markdown: (car: Car) => pageMarkdown(casesPage(car)),
} as const;

export function casesCommand(root: Command, ends: Ends): void {
  carCommand(root, ends, {
    name: "cases",
    description: "Ride heights, loads, travel left, forces and balance in every load case of one car or set-up.",
    example: "bellcrank cases samples/quill/quill.crank --sweep speed --to 230km/h:23",
    options: [
      new Option(
        "--sweep <over>",
        "curves over speed, or over lateral acceleration until a wheel lifts, instead",
      ).choices(["speed", "lateral"]),
      new Option("--to <value:steps>", "how far the sweep goes, such as 260km/h:26 or 3g:30"),
      new Option("--at <case>", "the case that a sweep takes everything else from, else a straight level road"),
    ],
    outputs: {
      text: (car, asked) => written("text", car, asked),
      json: (car, asked) => written("json", car, asked),
      csv: (car, asked) => written("csv", car, asked),
      markdown: (car, asked) => written("markdown", car, asked),
    },
  });
}

function written(format: keyof typeof outputs, car: Car, asked: Asked): string {
  const { sweep } = asked;
  if (sweep === "speed" || sweep === "lateral") return sweepOutputs[format](car, sweepAsked(car, sweep, asked));
  if (car.cases.names.length === 0) throw new UsageError(`${car.model.setup ?? car.model.name} has no load case`);
  return outputs[format](car);
}

/** As far as a sweep goes where nothing is said. */
const FAR = { speed: "300km/h:30", lateral: "6g:60" } as const;

function sweepAsked(car: Car, over: "speed" | "lateral", { to = FAR[over], at }: Asked) {
  const [value = to, steps = "20"] = to.split(":");
  const [limit = 0] = gridOf("--to", value, over === "speed" ? "speed" : "acceleration");
  const count = Number(steps);
  if (!(limit > 0)) throw new UsageError(`--to "${to}": a sweep goes from 0 to a value above it`);
  if (!Number.isInteger(count) || count < 1 || count > 10_000)
    throw new UsageError(`--to "${to}": the number of steps goes from 1 to 10000`);
  const found = car.cases.sweep({ over, from: at, to: limit, steps: count });
  if (found.kind === "absent") throw new UsageError(found.reason);
  return found;
}
