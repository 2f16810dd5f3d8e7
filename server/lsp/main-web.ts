/**
 * Starts the language server as a worker of a browser. It reads no file by itself: the client sends whatever is asked for.
 *
 * Invariant: nothing of Node is in here or in what this imports; the build fails where something is.
 */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from "vscode-languageserver/browser";
import { NO_FILES } from "../host/workspace-files.js";
import type { NextTurn } from "./environment.js";
import { startServer } from "./server.js";

/** The worker itself is one end of the channel. */
const port = globalThis as unknown as ConstructorParameters<typeof BrowserMessageReader>[0];

/** As a browser has it; the types at hand are those of Node. */
interface Port {
  addEventListener(kind: "message", heard: () => void): void;
  start(): void;
  postMessage(message: undefined): void;
  close(): void;
}

/** A message to itself comes after those that are already here; a browser holds timers back for several milliseconds. */
const nextTurn: NextTurn = (run) => {
  const { port1, port2 } = new MessageChannel() as unknown as Readonly<Record<"port1" | "port2", Port>>;
  const close = (): void => port1.close();
  port1.addEventListener("message", () => {
    close();
    run();
  });
  port1.start();
  port2.postMessage(undefined);
  return close;
};

startServer(createConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port)), {
  files: NO_FILES,
  nextTurn,
  revisions: undefined,
});
