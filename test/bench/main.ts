/** `npm run bench`: prints what was measured, and on what machine. Measures only; no test asserts a time. */
import { cpus, totalmem } from "node:os";
import { benchCases } from "./cases.js";
import { benchCorner } from "./corner.js";
import { benchKeystrokes } from "./keystrokes.js";
import { benchKerb } from "./kerb.js";
import { benchPanel } from "./panel-page.js";
import { benchParser } from "./parser.js";
import { benchRide } from "./ride.js";
import { benchSweep } from "./sweep.js";
import { benchWholeEvaluation } from "./whole-evaluation.js";

const [processor] = cpus();
console.log(
  `${cpus().length} × ${processor?.model ?? "unknown processor"}, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.version}\n`,
);
benchParser();
benchCorner();
benchCases();
benchRide();
benchWholeEvaluation();
benchKerb();
await benchKeystrokes();
await benchSweep();
await benchPanel();
