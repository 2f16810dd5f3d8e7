/** The extension's two ends: what is set up when the first Bellcrank file is opened, and taken down at the end. */
import * as vscode from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";
import { registerNewCar } from "./commands/new-car.js";
import { registerOpenExample } from "./commands/open-example.js";
import { registerOpenFindingPage } from "./commands/open-finding-page.js";
import { registerRestartServer } from "./commands/restart-server.js";
import { registerShowOutput } from "./commands/show-output.js";
import { registerSetupSheet } from "./commands/setup-sheet.js";
import { registerShowRates } from "./commands/show-rates.js";
import { registerCompare } from "./compare/register.js";
import { createExpectationTests } from "./expectation-tests.js";
import { createLanguageClient, findingsPage } from "./language-client.js";
import { registerMechanismPanel } from "./panel/register.js";
import { answerReadText } from "./read-text.js";
import { createStatus } from "./status.js";

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const output = vscode.window.createOutputChannel("Bellcrank", { log: true });
  const client = createLanguageClient(context, output);
  context.subscriptions.push(
    output,
    // Stops the server when the window closes.
    { dispose: () => client.dispose() },
    answerReadText(client),
    createStatus(client),
    createExpectationTests(client),
    registerShowRates(client),
    registerCompare(client),
    registerSetupSheet(client),
    registerNewCar(client),
    registerOpenExample(context),
    registerMechanismPanel(context, client),
    registerOpenFindingPage(findingsPage(context)),
    registerRestartServer(client),
    registerShowOutput(output),
  );
  await start(client, output);
}

/** A server that does not come up leaves highlighting and the commands standing, so that a restart can be tried. */
async function start(client: LanguageClient, output: vscode.LogOutputChannel): Promise<void> {
  try {
    await client.start();
  } catch (error) {
    // The client has already shown a message to the user.
    output.error(`The language server did not start: ${String(error)}`);
  }
}
