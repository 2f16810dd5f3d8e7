/** What the extension sets up when the first Bellcrank file is opened, on a machine and in a browser alike. */
import * as vscode from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { findingsPage } from "./client-options.js";
import { registerNewCar } from "./commands/new-car.js";
import { registerOpenExample } from "./commands/open-example.js";
import { registerOpenFindingPage } from "./commands/open-finding-page.js";
import { registerRenameHere } from "./commands/rename-here.js";
import { registerRestartServer } from "./commands/restart-server.js";
import { registerShowOutput } from "./commands/show-output.js";
import { registerSetupSheet } from "./commands/setup-sheet.js";
import { registerShowRates } from "./commands/show-rates.js";
import { registerWhereFrom } from "./commands/where-from.js";
import { registerCompare } from "./compare/register.js";
import { followEmptyState } from "./empty-state.js";
import { createExpectationTests } from "./expectation-tests.js";
import { nameFiles } from "./name-files.js";
import { registerMechanismPanel } from "./panel/register.js";
import { answerReadText } from "./read-text.js";
import { createStatus } from "./status.js";

export interface Surroundings {
  readonly createClient: (context: vscode.ExtensionContext, output: vscode.LogOutputChannel) => BaseLanguageClient;
  /** Whether the server reads files with such an address by itself. */
  readonly serverReads: (uri: vscode.Uri) => boolean;
}

/** Does not wait for the server: the editor has its commands at once, and what is asked before the server runs waits for it. */
export function activateWith(context: vscode.ExtensionContext, { createClient, serverReads }: Surroundings): void {
  const output = vscode.window.createOutputChannel("Bellcrank", { log: true });
  const client = createClient(context, output);
  context.subscriptions.push(
    output,
    // Stops the server when the window closes.
    { dispose: () => client.dispose() },
    answerReadText(client),
    nameFiles(client, serverReads),
    createStatus(client),
    followEmptyState(),
    createExpectationTests(client),
    registerShowRates(client),
    registerCompare(client),
    registerWhereFrom(client),
    registerSetupSheet(client),
    registerNewCar(client),
    registerOpenExample(context),
    registerMechanismPanel(context, client),
    registerOpenFindingPage(findingsPage(context)),
    registerRenameHere(),
    registerRestartServer(client),
    registerShowOutput(output),
  );
  void start(client, output);
}

/** A server that does not come up leaves highlighting and the commands standing, so that a restart can be tried. */
async function start(client: BaseLanguageClient, output: vscode.LogOutputChannel): Promise<void> {
  try {
    await client.start();
  } catch (error) {
    // The client has already shown a message to the user.
    output.error(`The language server did not start: ${String(error)}`);
  }
}
