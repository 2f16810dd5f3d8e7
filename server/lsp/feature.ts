/** One thing that the server can do for an editor: what it announces, and how it answers. One a file in `features/`. */
import type { Connection, ServerCapabilities } from "vscode-languageserver";
import type { Session } from "./session.js";

export interface Feature {
  readonly capabilities: Partial<ServerCapabilities>;
  attach(connection: Connection, session: Session): void;
}
