/**
 * Goes once through everything that the first document asks for, while the client still waits for its first answer anyway: a car is
 * read, resolved, worked out and checked, so that what does it is compiled by then.
 */
import { createWorkspace } from "../snapshot/create.js";
import { startHere } from "../views/new-car/start-here.js";

const NOWHERE = "bellcrank:warm-up";

export function warmUp(): void {
  const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
  workspace.set(NOWHERE, startHere(NOWHERE, "")?.text ?? "");
  workspace.file(NOWHERE).findings();
}
