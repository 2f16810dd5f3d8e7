/** Every usual unit of the table, each once, for tests that write units. */
import { dimensions } from "../../grammar/vocabulary/dimensions.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import { unitsOf } from "../../server/quantities/index.js";

export const everyUnit: readonly string[] = [
  ...new Set((Object.keys(dimensions) as DimensionName[]).flatMap((name) => unitsOf(name))),
].filter((unit) => unit !== "");
