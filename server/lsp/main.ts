/** Starts the language server on the transport that the command line names (`--stdio`, `--node-ipc`). */
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { Disk } from "../host/disk.js";
import { gitRevisions } from "../host/revisions.js";
import type { NextTurn } from "./environment.js";
import { startServer } from "./server.js";

const nextTurn: NextTurn = (run) => {
  const turn = setImmediate(run);
  return () => clearImmediate(turn);
};

startServer(createConnection(ProposedFeatures.all), { files: new Disk(), nextTurn, revisions: gitRevisions });
