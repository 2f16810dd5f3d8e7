/** One speed on the command line, above nought. */
import { gridOf } from "./grid.js";
import { UsageError } from "./usage-error.js";

/** m/s; a `UsageError` says how to write it. */
export function speedOf(text: string): number {
  const [speed = 0, ...more] = gridOf("--speed", text, "speed");
  if (!(speed > 0) || more.length > 0) throw new UsageError(`--speed "${text}": one speed above 0, such as 120km/h`);
  return speed;
}
