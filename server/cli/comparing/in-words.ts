/** What git cannot answer is for the user to put right, as any other operand is. */
import { GitTrouble } from "../../host/git.js";
import { UsageError } from "../usage-error.js";

export function inWords<T>(find: () => T): T {
  try {
    return find();
  } catch (error) {
    throw error instanceof GitTrouble ? new UsageError(error.message) : error;
  }
}
