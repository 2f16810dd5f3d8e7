/** What the parts of the page can ask for; the page itself does it. */
import type { PanelPlace } from "../../../server/lsp/protocol-panel.js";
import type { PictureFormat } from "../messages.js";
import type { Motion } from "./pose.js";
import type { HeldEye, State } from "./state.js";

export interface Actions {
  change(how: (state: State) => State): void;
  move(motion: Motion, to: number): void;
  /** Says it to a screen reader. */
  say(text: string): void;
  goTo(place: PanelPlace | undefined): void;
  choose(path: string): void;
  /** Shows what an eye's move would do; nothing is written. */
  holdEye(eye: Omit<HeldEye, "answer">): void;
  /** The eye that is held now, which may be newer than what is drawn. */
  heldEye(): HeldEye | undefined;
  /** Writes the held eye's place into the text. */
  dropEye(): void;
  letGo(): void;
  save(format: PictureFormat): void;
}
