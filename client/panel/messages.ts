/** What the panel's page and the extension say to each other. Types only: the page is another world than the extension. */
import type {
  MechanismAnswer,
  MoveEyeAnswer,
  MoveEyeParams,
  PanelCurvesAnswer,
  PanelPlace,
} from "../../server/lsp/protocol-panel.js";

/** As the protocol counts, from 0. */
export interface Cursor {
  readonly uri: string;
  readonly line: number;
  readonly character: number;
}

export type ToPage =
  | { readonly kind: "mechanism"; readonly answer: MechanismAnswer }
  /** There is nothing to ask about: no Bellcrank file, or no server. */
  | { readonly kind: "nothing"; readonly reason: string }
  | { readonly kind: "cursor"; readonly cursor: Cursor }
  | { readonly kind: "curves"; readonly answer: PanelCurvesAnswer }
  /** The answer to the page's request of that number. */
  | { readonly kind: "eye"; readonly request: number; readonly answer: MoveEyeAnswer }
  | { readonly kind: "told"; readonly text: string };

export type PictureFormat = "svg" | "png";

export type FromPage =
  | { readonly kind: "ready"; readonly state: Followed | undefined }
  | { readonly kind: "choose"; readonly name: string | undefined }
  | { readonly kind: "wants-curves"; readonly wanted: boolean }
  | { readonly kind: "go-to"; readonly place: PanelPlace }
  /** `write` changes the text; without it only the answer is asked for. */
  | { readonly kind: "move-eye"; readonly request: number; readonly params: MoveEyeParams; readonly write: boolean }
  | { readonly kind: "undo" }
  | { readonly kind: "save"; readonly format: PictureFormat; readonly name: string; readonly base64: string };

/** What a panel is about; kept by the page, so that it is there again after the window was loaded anew. */
export interface Followed {
  readonly uri: string;
  /** Chosen in the page; undefined where it follows the cursor. */
  readonly name: string | undefined;
}
