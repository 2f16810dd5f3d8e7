/** Motion ratios of an element: one number or a table a mode. */
import { modesIn } from "../../grammar/vocabulary/index.js";
import type { Surroundings } from "./attachments.js";
import type { ConnectionModel, Mode, RatioModel } from "./car.js";
import { isCornerElement } from "./sides.js";
import type { TreeBlock, TreeStatement } from "./tree.js";

type RatiosModel = Extract<ConnectionModel, { kind: "ratio" }>;
type Ratio = RatiosModel["ratios"][number];

export function ratioOf(element: TreeStatement, around: Surroundings): RatiosModel | undefined {
  const lines = (element.block?.statements ?? []).filter((line) => line.word === "ratio");
  const ratios: Ratio[] = [];
  const kinds = new Set<boolean>();
  for (const line of lines) {
    const read = readRatio(line, element, around);
    if (read === undefined) continue;
    const first = ratios.find((other) => other.mode === read.ratio.mode);
    if (first === undefined) {
      ratios.push(read.ratio);
      kinds.add(read.torsional);
    } else {
      const problem = {
        kind: "duplicate",
        word: `ratio ${first.mode}`,
        what: "property",
        first: first.origin,
      } as const;
      around.sink.report({ ...line.origin, ...problem });
    }
  }
  const [first] = ratios;
  if (first === undefined) return undefined;
  if (kinds.size > 1) {
    const detail = "Some of its ratios are of a length and some of an angle; an element deflects in one of them.";
    around.sink.report({ ...first.origin, kind: "wrong-form", word: "ratio", expected: [], detail });
    return undefined;
  }
  return { kind: "ratio", ratios, torsional: kinds.has(true), origin: first.origin };
}

interface Read {
  readonly ratio: Ratio;
  readonly torsional: boolean;
}

function readRatio(line: TreeStatement, element: TreeStatement, around: Surroundings): Read | undefined {
  const mode = modeOf(line, element, around);
  const value = line.values.find((known) => known.kind === "number");
  if (mode === undefined) return undefined;
  if (value?.kind === "number") {
    const ratio: RatioModel = { kind: "constant", value };
    return { ratio: { mode, ratio, origin: line.origin }, torsional: value.dimension === "angle-per-length" };
  }
  return line.block && readTable(line, line.block, mode, around);
}

/** Without a mode: of the element's own wheel, or the one mode that it is for. */
function modeOf(line: TreeStatement, element: TreeStatement, around: Surroundings): Mode | undefined {
  const written = line.values.find((value) => value.kind === "word");
  const allowed = modesIn(around.axle === undefined ? "car" : "axle");
  if (written?.kind === "word") {
    if (allowed.includes(written.text)) return written.text as Mode;
    around.sink.report({
      ...written.origin,
      kind: "unknown-word",
      word: written.text,
      concept: "ratio",
      candidates: allowed,
    });
    return undefined;
  }
  if (isCornerElement(element)) return "corner";
  const claims = element.values.find((value) => value.kind === "modes");
  const [only, more] = claims?.kind === "modes" ? claims.modes : [];
  if (only !== undefined && more === undefined) return only.text as Mode;
  if (only !== undefined) {
    const expected = allowed.map((mode) => `ratio ${mode}`);
    const detail = "Say in which mode the wheels are moved.";
    around.sink.report({ ...line.wordOrigin, kind: "wrong-form", word: "ratio", expected, detail });
  }
  return undefined;
}

function readTable(line: TreeStatement, block: TreeBlock, mode: Mode, around: Surroundings): Read | undefined {
  const travel: number[] = [];
  const deflection: number[] = [];
  let torsional = false;
  for (const { key, value } of block.rows) {
    if (key.kind !== "number" || value.kind !== "number") continue;
    travel.push(key.value);
    deflection.push(value.value);
    torsional = value.dimension === "angle";
  }
  if (travel.length < 2) {
    const expected = ["ratio heave { -20 mm: -16 mm, 0 mm: 0 mm, 20 mm: 17 mm }"];
    const detail = "A table needs two rows or more.";
    around.sink.report({ ...line.wordOrigin, kind: "wrong-form", word: "ratio", expected, detail });
    return undefined;
  }
  const ratio: RatioModel = { kind: "table", travel, deflection, origin: block.origin };
  return { ratio: { mode, ratio, origin: line.origin }, torsional };
}
