/** Holds output against the JSON Schemas that the package ships. */
import { readFileSync } from "node:fs";
import { Ajv } from "ajv";

export function problemsAgainst(
  schema:
    | "adjust"
    | "case-sweep"
    | "cases"
    | "check"
    | "check-baseline"
    | "compare"
    | "curves"
    | "explain"
    | "rates"
    | "rates-at"
    | "kinematics"
    | "log"
    | "logger"
    | "measured"
    | "modes"
    | "response"
    | "road"
    | "kerb"
    | "sheet"
    | "solve"
    | "sweep"
    | "weights",
  output: string,
): unknown {
  const validate = new Ajv({ allErrors: true }).compile(
    JSON.parse(readFileSync(`server/cli/schema/${schema}.json`, "utf8")),
  );
  return validate(JSON.parse(output)) ? [] : validate.errors;
}
