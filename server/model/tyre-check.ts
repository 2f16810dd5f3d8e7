/** A table of a tyre's stiffness that cannot be used: it has too few pressures, or nothing says how the tyre runs. */
import type { AxleSides } from "./axle-sides.js";
import { starterOf } from "./needed.js";
import { findWord } from "../../grammar/vocabulary/index.js";
import type { Sink } from "./sink.js";
import { wordIn, type TreeBlock } from "./tree.js";

export function checkTyre({ blocks }: AxleSides, sink: Sink): void {
  const [left, right] = [wordIn(blocks.left, "wheel")?.block, wordIn(blocks.right, "wheel")?.block];
  checkTable(left, sink);
  if (right !== left) checkTable(right, sink);
}

function checkTable(wheel: TreeBlock | undefined, sink: Sink): void {
  const table = wordIn(wheel, "tyre-rates");
  if (wheel === undefined || table?.block === undefined) return;
  if (table.block.rows.length < 2) {
    const detail = "A stiffness at a pressure takes rows at two pressures or more.";
    sink.report({ ...table.wordOrigin, kind: "wrong-form", word: "tyre-rates", expected: [], detail });
  }
  const pressure = findWord("wheel", "pressure");
  if (pressure === undefined || wordIn(wheel, "pressure") !== undefined || wheel.broken?.has("pressure") === true)
    return;
  sink.report({
    ...table.wordOrigin,
    kind: "missing-property",
    word: "pressure",
    concept: "wheel",
    owner: "wheel",
    starter: starterOf(pressure),
    insertAt: wheel.origin.end - 1,
  });
}
