/** What client and server say to each other about refactorings. Types only. */
import type { PlainRange } from "./protocol.js";

/** A command of the client: asks for another name for what stands there, as the editor's own rename does. */
export type RenameHereCommand = "bellcrank.renameHere";

export type RenameHereArguments = [uri: string, position: PlainRange["start"]];
