/** Starts the language server on the transport that the command line names (`--stdio`, `--node-ipc`). */
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { Disk } from "../host/disk.js";
import { gitRevisions } from "../host/revisions.js";
import { startServer } from "./server.js";

startServer(createConnection(ProposedFeatures.all), new Disk(), gitRevisions);
