/**
 * From a keystroke to its published findings, over the wire, against a bare server in the same run;
 * hover and completion; opening; start; memory over a thousand edits; a folder of a thousand set-ups.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync, copyFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { SERVER_MEMORY_FLAGS } from "../../client/server-flags.js";
import type { InitializationOptions } from "../../server/lsp/protocol.js";
import { Wire } from "../support/wire.js";
import { carOf3000Lines, carOf300Lines } from "./cars.js";
import { row, type Spread, spread } from "./statistics.js";

const server = ["dist/server.cjs", "--stdio"];
/** Edits that are measured, and those before, while the compiler is still at work on the server. */
const edits = 500;
const warmUp = 600;

export async function benchKeystrokes(): Promise<void> {
  const floor = await floorServer();
  const small = carOf300Lines();
  const large = carOf3000Lines();
  print("floor: keystroke to empty findings, 300 lines", await keystrokes([floor, "--stdio"], small));
  print("keystroke to findings, 300 lines", await keystrokes(server, small), { p50: 2.5, p95: 8 });
  print("floor: keystroke to empty findings, 3,000 lines", await keystrokes([floor, "--stdio"], large));
  print("keystroke to findings, 3,000 lines", await keystrokes(server, large), { p95: 25 });
  await questions(small);
  await starting(small);
  await memory(small);
  await manySetups();
}

function print(
  name: string,
  { p50, p95 }: Spread,
  limits: { readonly p50?: number; readonly p95?: number } = {},
): void {
  console.log(row(`${name}, p50`, p50, "ms", limits.p50 === undefined ? undefined : { atMost: limits.p50 }));
  console.log(row(`${name}, p95`, p95, "ms", limits.p95 === undefined ? undefined : { atMost: limits.p95 }));
}

async function floorServer(): Promise<string> {
  const outfile = ".cache/run/floor-server.cjs";
  await build({
    entryPoints: ["test/bench/floor-server.ts"],
    outfile,
    bundle: true,
    minify: true,
    platform: "node",
    format: "cjs",
    logLevel: "warning",
  });
  return outfile;
}

/** As our own extension starts it: with plots in its hovers. */
async function started(args: readonly string[], folders: readonly string[] = []): Promise<Wire> {
  const wire = new Wire(process.execPath, [...SERVER_MEMORY_FLAGS, ...args]);
  await wire.initialize(folders, {
    capabilities: {
      textDocument: {
        hover: { contentFormat: ["markdown"] },
        completion: { completionItem: { snippetSupport: true } },
      },
      workspace: { didChangeWatchedFiles: { dynamicRegistration: true } },
    },
    initializationOptions: { drawsImages: true } satisfies InitializationOptions,
  });
  return wire;
}

const uri = "file:///bench/quill.crank";

/** The front heave spring's rate, every time to a value that was never there before, so that nothing is at hand already. */
async function keystrokes(args: readonly string[], text: string): Promise<Spread> {
  const wire = await started(args);
  await wire.open(uri, text);
  await wire.findings(uri);
  const times: number[] = [];
  for (let edit = 0; edit < edits + warmUp; edit += 1) {
    const time = await keystroke(wire, uri, text, edit);
    if (edit >= warmUp) times.push(time);
  }
  await wire.stop();
  return spread(times);
}

async function keystroke(wire: Wire, at: string, text: string, edit: number): Promise<number> {
  const range = rateIn(text, edit === 0);
  const begun = performance.now();
  await wire.change(at, (40 + edit * 0.013).toFixed(3), range);
  await wire.findings(at);
  return performance.now() - begun;
}

/** The first `rate NN N/mm`: two digits as written, six once it was typed over. */
function rateIn(text: string, isFirst: boolean) {
  const lines = text.split("\n");
  const line = lines.findIndex((candidate) => /rate \d\d N\/mm$/.test(candidate) || /third\.rate \d\d/.test(candidate));
  const character = (lines[line] ?? "").indexOf("rate ") + 5;
  return { start: { line, character }, end: { line, character: character + (isFirst ? 2 : 6) } };
}

async function questions(text: string): Promise<void> {
  const wire = await started(server);
  await wire.open(uri, text);
  await wire.findings(uri);
  const lines = text.split("\n");
  const line = lines.findIndex((candidate) => candidate.includes("damper roll-damper"));
  const position = { line, character: (lines[line] ?? "").indexOf("roll-damper") + 2 };
  for (const method of ["textDocument/hover", "textDocument/completion"]) {
    const times: number[] = [];
    for (let index = 0; index < 600; index += 1) {
      await keystroke(wire, uri, text, index);
      const begun = performance.now();
      const answer = await wire.request(method, {
        textDocument: { uri },
        position: method.endsWith("hover") ? position : { line: line + 1, character: 0 },
      });
      if (index >= 300) times.push(performance.now() - begun);
      if (method.endsWith("hover") && !JSON.stringify(answer).includes("data:image/svg+xml"))
        throw new Error("the hover that is measured has no plot");
    }
    console.log(row(`${method.split("/")[1]} after an edit, p95`, spread(times).p95, "ms", { atMost: 3 }));
  }
  await wire.stop();
}

async function starting(text: string): Promise<void> {
  const starts: number[] = [];
  const opens: number[] = [];
  for (let run = 0; run < 12; run += 1) {
    const begun = performance.now();
    const wire = await started(server);
    starts.push(performance.now() - begun);
    const opened = performance.now();
    await wire.open(uri, text);
    await wire.findings(uri);
    opens.push(performance.now() - opened);
    await wire.stop();
  }
  console.log(row("process start to initialized, p50", spread(starts).p50, "ms", { atMost: 250 }));
  console.log(row("opening a file to first findings, p50", spread(opens).p50, "ms", { atMost: 60 }));
}

async function memory(text: string): Promise<void> {
  const wire = await started(server);
  await wire.open(uri, text);
  await wire.findings(uri);
  const after: number[] = [];
  for (let edit = 0; edit < 3000; edit += 1) {
    await keystroke(wire, uri, text, edit);
    if (edit % 1000 === 999) after.push(residentMegabytes(wire.pid));
  }
  console.log(row("resident memory after 1,000 edits", after[0] ?? Number.NaN, "MB", { atMost: 110 }));
  console.log(row("resident memory after 3,000 edits", after[2] ?? Number.NaN, "MB"));
  await wire.stop();
}

/** From the kernel's own account of the process (Linux); absent elsewhere. */
function residentMegabytes(pid: number | undefined): number {
  const found = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, "utf8"));
  return found === null ? Number.NaN : Number(found[1]) / 1024;
}

async function manySetups(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "bellcrank-bench-"));
  for (const name of ["quill.crank", "parts.crank"]) copyFileSync(join("samples/quill", name), join(folder, name));
  const setups = Array.from({ length: 1000 }, (_, index) => {
    const path = join(folder, `run-${index}.crank`);
    const text = `use "quill.crank"\n\nsetup run-${index} from quill {\n  front.third.rate ${40 + (index % 37)} N/mm\n  rear.third.rate ${60 + (index % 23)} N/mm\n}\n`;
    writeFileSync(path, text);
    return { uri: pathToFileURL(path).href, text };
  });
  const wire = await started(server, [pathToFileURL(folder).href]);
  const begun = performance.now();
  for (const { uri: at, text } of setups) await wire.open(at, text);
  await Promise.all(setups.map(({ uri: at }) => wire.findings(at)));
  console.log(row("1,000 set-up files opened", (performance.now() - begun) / 1000, "s", { atMost: 3 }));
  const { uri: at, text } = setups[500] ?? { uri: "", text: "" };
  const times: number[] = [];
  for (let edit = 0; edit < 300; edit += 1) times.push(await keystroke(wire, at, text, edit));
  const alone = await started(server, [pathToFileURL(folder).href]);
  await alone.open(at, text);
  await alone.findings(at);
  const timesAlone: number[] = [];
  for (let edit = 0; edit < 300; edit += 1) timesAlone.push(await keystroke(alone, at, text, edit));
  console.log(row("an edit among 1,000 open set-ups, p50", spread(times).p50, "ms"));
  console.log(row("the same with one open, p50", spread(timesAlone).p50, "ms"));
  await wire.stop();
  await alone.stop();
  rmSync(folder, { recursive: true, force: true });
}
