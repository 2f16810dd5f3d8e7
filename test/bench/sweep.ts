/** A sweep of 10,000 set-ups over both ends of the car, with figures at rest and in a case, as a user would call it. */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync, rmSync } from "node:fs";

const out = ".cache/sweep-bench.csv";
const figures = ["front.heave-rate", "rear.heave-rate", "load-transfer-front at hairpin"];
const axes = ["front.third.rate=40..80N/mm:100", "rear.third.rate=60..90N/mm:100"];
const args = [
  "sweep",
  "samples/quill/quill.crank",
  ...axes.flatMap((axis) => ["--vary", axis]),
  ...figures.flatMap((figure) => ["--figure", figure]),
  "--out",
  out,
];

export async function benchSweep(): Promise<void> {
  rmSync(out, { force: true });
  const start = performance.now();
  const child = spawn(process.execPath, ["dist/cli.js", ...args], { stdio: "ignore" });
  let largest = 0;
  const sizes: number[] = [];
  const watch = setInterval(() => {
    const size = residentOf(child.pid);
    if (size === undefined) return;
    sizes.push(size);
    largest = Math.max(largest, size);
  }, 250);
  await once(child, "exit");
  clearInterval(watch);
  const seconds = (performance.now() - start) / 1000;
  const rows = readFileSync(out, "utf8").split("\n").length - 2;
  const half = sizes.slice(Math.floor(sizes.length / 2));
  const memory =
    sizes.length === 0
      ? "memory not known on this system"
      : `largest ${largest.toFixed(0)} MB, in the second half from ${Math.min(...half).toFixed(0)} to ${Math.max(...half).toFixed(0)} MB`;
  console.log(`sweep: ${rows} set-ups in ${seconds.toFixed(1)} s (goal 25 s on two cores), ${memory}`);
  rmSync(out, { force: true });
}

/** MB, where the system tells. */
function residentOf(pid: number | undefined): number | undefined {
  try {
    const found = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid ?? 0}/status`, "utf8"));
    return found === null ? undefined : Number(found[1]) / 1024;
  } catch {
    return undefined;
  }
}
