/** The command line as commander knows it: one command a file, each registers itself. */
import { Command } from "commander";
import { adjustCommand } from "./commands/adjust.js";
import { casesCommand } from "./commands/cases.js";
import { checkCommand } from "./commands/check.js";
import { compareCommand } from "./commands/compare.js";
import { curvesCommand } from "./commands/curves.js";
import { explainCommand } from "./commands/explain.js";
import { formatCommand } from "./commands/format.js";
import { importCommand } from "./commands/import.js";
import { kerbCommand } from "./commands/kerb.js";
import { kinematicsCommand } from "./commands/kinematics.js";
import { mergeCommand } from "./commands/merge.js";
import { logCommand } from "./commands/log.js";
import { measuredCommand } from "./commands/measured.js";
import { modesCommand } from "./commands/modes.js";
import { newCommand } from "./commands/new.js";
import { ratesCommand } from "./commands/rates.js";
import { responseCommand } from "./commands/response.js";
import { roadCommand } from "./commands/road.js";
import { solveCommand } from "./commands/solve.js";
import { sweepCommand } from "./commands/sweep.js";
import { loggerCommand } from "./commands/logger.js";
import { sheetCommand } from "./commands/sheet.js";
import { serveCommand } from "./commands/serve.js";
import { weightsCommand } from "./commands/weights.js";
import { cautions } from "../views/cautions.js";
import type { Ends } from "./ends.js";
import { version } from "./version.js";

export function program(ends: Ends): Command {
  const root = new Command("bellcrank")
    .description("Race-car suspension set-ups as text: rates, coupling errors, reviews.")
    .version(version)
    .showHelpAfterError("(bellcrank --help tells more)")
    .exitOverride()
    .addHelpText("after", `\n${cautions}`);
  for (const add of [
    checkCommand,
    ratesCommand,
    casesCommand,
    modesCommand,
    roadCommand,
    responseCommand,
    kerbCommand,
    kinematicsCommand,
    curvesCommand,
    weightsCommand,
    measuredCommand,
    compareCommand,
    logCommand,
    explainCommand,
    adjustCommand,
    sheetCommand,
    loggerCommand,
    solveCommand,
    sweepCommand,
    importCommand,
    formatCommand,
    newCommand,
    mergeCommand,
    serveCommand,
  ])
    add(root, ends);
  return root;
}
