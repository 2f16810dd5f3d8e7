/** `bellcrank logger`: from a logged channel to wheel travel, heave and roll, and a measured pair held against the linkage. */
import { type Command, Option } from "commander";
import type { CheckedCar } from "../../findings/context.js";
import { checkPairs, pairsPage } from "../../views/logger/check-pairs.js";
import { channelsOf, type LoggerAsked } from "../../views/logger/logged.js";
import { loggerPage } from "../../views/logger/page.js";
import { pageMarkdown } from "../../views/rates-markdown.js";
import { type Asked, carCommand } from "../car-command.js";
import type { Ends } from "../ends.js";
import { gridOf } from "../grid.js";
import { loggerCsv, loggerJson, pairsCsv, pairsJson } from "../output/logger.js";
import { pageText } from "../output/rates-text.js";
import { readText } from "../text-file.js";
import { UsageError } from "../usage-error.js";

const MOST_POINTS = 10_001;

export function loggerCommand(root: Command, ends: Ends): void {
  carCommand(root, ends, {
    name: "logger",
    description:
      "A table and a polynomial from a logged rocker angle, spring or damper to wheel travel, heave or roll.",
    example: "bellcrank logger samples/quill/quill.crank --axle front --from side --format csv",
    options: [
      new Option("--axle <axle>", "which axle").choices(["front", "rear"]).default("front"),
      new Option("--from <channel>", "rocker, or the name of an element").makeOptionMandatory(),
      new Option("--zero <where>", "where the channel is set to nought").choices(["rest", "drawn"]).default("rest"),
      new Option("--reads <way>", "what makes it grow").choices(["compression", "extension"]).default("compression"),
      new Option("--points <count>", "rows of the table").default("21"),
      new Option("--within <error>", "largest error of the polynomial, of wheel travel").default("0.05mm"),
      new Option("--check <csv>", "hold a measured pair against it: motion and channel, each with its unit"),
    ],
    outputs: {
      text: (car, asked) => answer(car, asked, (page) => pageText(page)),
      markdown: (car, asked) => answer(car, asked, (page) => pageMarkdown(page)),
      json: (car, asked) => {
        const wanted = loggerAsked(car, asked);
        const pairs = pairsAsked(car, asked, wanted);
        return pairs === undefined ? loggerJson(car, wanted) : pairsJson(car, wanted, pairs);
      },
      csv: (car, asked) => {
        const wanted = loggerAsked(car, asked);
        const pairs = pairsAsked(car, asked, wanted);
        return pairs === undefined ? loggerCsv(car, wanted) : pairsCsv(pairs);
      },
    },
  });
}

function answer(car: CheckedCar, asked: Asked, write: (page: ReturnType<typeof loggerPage>) => string): string {
  const wanted = loggerAsked(car, asked);
  const pairs = pairsAsked(car, asked, wanted);
  return write(pairs === undefined ? loggerPage(car, wanted) : pairsPage(car, wanted, pairs));
}

function loggerAsked(car: CheckedCar, asked: Asked): LoggerAsked {
  const axle = asked["axle"] === "rear" ? "rear" : "front";
  const channel = asked["from"] ?? "";
  const has = channelsOf(car, axle);
  const own = car.model.setup ?? car.model.name;
  if (has.length === 0) throw new UsageError(`${own} has nothing on a ${axle} axle that a logger could follow`);
  if (!has.includes(channel))
    throw new UsageError(`the ${axle} axle of ${own} has no ${channel}; it has ${has.join(", ")}`);
  const points = Number(asked["points"]);
  if (!Number.isInteger(points) || points < 2 || points > MOST_POINTS)
    throw new UsageError(`--points "${asked["points"] ?? ""}": a count from 2 to ${MOST_POINTS}`);
  const [within = 0] = gridOf("--within", asked["within"] ?? "", "length");
  if (!(within > 0)) throw new UsageError(`--within "${asked["within"] ?? ""}": a length above 0, such as 0.05mm`);
  return {
    axle,
    channel,
    zero: asked["zero"] === "drawn" ? "drawn" : "rest",
    reads: asked["reads"] === "extension" ? "extension" : "compression",
    points,
    within,
  };
}

function pairsAsked(car: CheckedCar, { check }: Asked, wanted: LoggerAsked) {
  if (check === undefined) return undefined;
  const found = checkPairs(car, wanted, readText(check));
  if ("why" in found) throw new UsageError(`${check}: ${found.why}`);
  return found.pairs;
}
