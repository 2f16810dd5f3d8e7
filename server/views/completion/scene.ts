/** Where a value is being completed. */
import type { Span } from "../../../grammar/index.js";
import type { CheckedCar } from "../../findings/context.js";
import type { FileView } from "../../snapshot/workspace.js";

export interface ValueScene {
  readonly file: FileView;
  readonly car: CheckedCar | undefined;
  /** Axle that is written around the cursor. */
  readonly axle: "front" | "rear" | undefined;
  /** Kind of the block around the line: `fit` offers only parts that go in. */
  readonly concept: string;
  readonly span: Span;
}
