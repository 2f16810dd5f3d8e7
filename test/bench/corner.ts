/**
 * Corner solves a second, position only, on one core: the TypeScript as it is bundled for Node, and the
 * same algorithm in C (corner.c, cc -O3) where there is a C compiler. Both print nanoseconds a solve for the
 * same travels; the sums of their results have to agree.
 *
 * Run by `npm run bench`.
 *
 * Budget: at least 1.5 million solves a second, and at least 0.8 of the throughput of the C.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import type { Constants } from "../../server/linkage/constants.js";
import { mechanismOf } from "../../server/linkage/mechanism.js";
import { POSITION_LENGTH, type PositionSolver, positionsOf } from "../../server/linkage/position-solver.js";
import type { Branch } from "../../server/linkage/solve-travel.js";
import { wishboneGeometry } from "../support/wishbone-case.js";

const CACHE = ".cache/bench";
const COUNT = 4000;
const REPEATS = 50;
/** Rounds of TypeScript and C in turn. The fastest of each stands: what is slower is the machine's other work. */
const ROUNDS = 25;
const WARM_UP = 5;

/** Fields of `Constants` in the order of the C struct. */
const FIELDS = (
  "lfx lfy lfz lux luy luz lvx lvy lvz ufx ufy ufz uux uuy uuz uvx uvy uvz a0 a1 a2 b0 b1 b2 k0 k1 k2 " +
  "branchU overUpright tix tiy tiz trackAlong trackArm2 trackK branchT wheelN wheelR wheelM wheelZ " +
  "pfx pfy pfz pux puy puz pvx pvy pvz rodN rodR rodM rux ruy ruz rvx rvy rvz rodK branchR " +
  "steerHeld carrier"
).split(" ") as (keyof Constants)[];

/** A branch as the C reads it. */
const numbersOf = (b: Branch): number[] => {
  const limits = [b.limits.low.travel, b.limits.high.travel, b.tLow, b.tHigh];
  const table = [b.exact, b.near, b.lowest, b.perMetre, b.cells];
  return [...FIELDS.map((field) => Number(b.constants[field])), ...limits, ...table, ...b.start];
};

interface Round {
  readonly nanoseconds: number;
  readonly sum: number;
}

/** Up and down through −30 … 30 mm in even steps: what a sweep asks for. */
const sweep = (): number[] =>
  Array.from({ length: COUNT }, (_, i) => {
    const phase = (i % 240) / 120;
    return 0.03 * (phase < 1 ? 2 * phase - 1 : 3 - 2 * phase);
  });

/** Travels in no order: the start is of little help. A linear congruential sequence, so that each run has the same. */
const scattered = (): number[] => {
  let state = 12345;
  return Array.from({ length: COUNT }, () => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    return 0.06 * (state / 0x7fffffff) - 0.03;
  });
};

function typescriptRound(solver: PositionSolver, travels: readonly number[]): Round {
  const out = new Float64Array(POSITION_LENGTH);
  let sum = 0;
  const start = process.hrtime.bigint();
  for (let r = 0; r < REPEATS; r++) {
    for (const travel of travels) {
      solver.solve(travel, out);
      sum += (out[0] ?? 0) + (out[1] ?? 0) + (out[2] ?? 0) + (out[3] ?? 0) + (out[4] ?? 0);
    }
  }
  return { nanoseconds: Number(process.hrtime.bigint() - start) / (travels.length * REPEATS), sum };
}

/** The compiled C, or undefined where there is no compiler. */
function compile(): string | undefined {
  mkdirSync(CACHE, { recursive: true });
  const binary = `${CACHE}/corner`;
  const cc = spawnSync("cc", ["-O3", "-o", binary, "test/bench/corner.c", "-lm"], { encoding: "utf8" });
  if (cc.error !== undefined) return undefined;
  if (cc.status !== 0) throw new Error(`cc could not build test/bench/corner.c:\n${cc.stderr}`);
  return binary;
}

function cRound(binary: string, input: string): Round {
  const { stdout } = spawnSync(binary, { input, encoding: "utf8" });
  const [nanoseconds = Number.NaN, sum = Number.NaN] = stdout.trim().split(/\s+/).map(Number);
  return { nanoseconds, sum };
}

const fastest = (rounds: readonly Round[]): number => Math.min(...rounds.map((r) => r.nanoseconds));

const rate = (nanoseconds: number): string =>
  `${(1e3 / nanoseconds).toFixed(2)} million/s (${nanoseconds.toFixed(0)} ns)`;

function compare(name: string, travels: readonly number[], binary: string | undefined): void {
  const mechanism = mechanismOf(wishboneGeometry, false);
  if ("kind" in mechanism) throw new Error(`the check case is degenerate: ${mechanism.reason}`);
  const solver = positionsOf(mechanism);
  const input = [...numbersOf(mechanism.branch), COUNT, REPEATS, ...travels].join("\n");
  for (let i = 0; i < WARM_UP; i++) typescriptRound(solver, travels);
  const typescript: Round[] = [];
  const c: Round[] = [];
  for (let i = 0; i < ROUNDS; i++) {
    typescript.push(typescriptRound(solver, travels));
    if (binary !== undefined) c.push(cRound(binary, input));
  }
  console.log(`  ${name}: TypeScript ${rate(fastest(typescript))}`);
  if (binary === undefined) return;
  const off = Math.abs((c[0]?.sum ?? Number.NaN) / (typescript[0]?.sum ?? Number.NaN) - 1);
  if (!(off < 1e-12)) throw new Error(`C and TypeScript disagree by ${off} on ${name}`);
  const ratio = fastest(c) / fastest(typescript);
  console.log(`  ${name}: C -O3      ${rate(fastest(c))}; TypeScript has ${ratio.toFixed(2)} of its throughput`);
}

/** Prints both figures for a sweep and for travels in no order. */
export function benchCorner(): void {
  const binary = compile();
  console.log("corner solves, position only, one core");
  if (binary === undefined) console.log("  no C compiler (cc): the comparison with C is left out");
  compare("sweep    ", sweep(), binary);
  compare("scattered", scattered(), binary);
}
