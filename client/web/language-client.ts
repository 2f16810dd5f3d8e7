/** The connection to the language server where the editor runs in a browser: dist/server-web.js as a worker. */
import * as vscode from "vscode";
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from "vscode-languageclient/browser";
import { clientOptions } from "../client-options.js";
import { LANGUAGE } from "../language.js";

/** As a browser has it; the types at hand are those of Node. */
interface BrowserWorker {
  terminate(): void;
}

declare const Worker: new (address: string) => BrowserWorker;

type Port = ConstructorParameters<typeof BrowserMessageReader>[0];

export function createLanguageClient(
  context: vscode.ExtensionContext,
  output: vscode.LogOutputChannel,
): LanguageClient {
  let worker: BrowserWorker | undefined;
  const stop = (): void => worker?.terminate();
  context.subscriptions.push({ dispose: stop });
  // Both ends of the channel by hand: the editor's own kind of worker is none that the library knows.
  const start = async () => {
    stop();
    worker = await startWorker(vscode.Uri.joinPath(context.extensionUri, "dist", "server-web.js"));
    const port = worker as unknown as Port;
    return { reader: new BrowserMessageReader(port), writer: new BrowserMessageWriter(port) };
  };
  return new LanguageClient(LANGUAGE, "Bellcrank", start, clientOptions(context, output));
}

/** From the script's text: a browser takes no worker from the address of an extension that was installed on another machine. */
async function startWorker(script: vscode.Uri): Promise<BrowserWorker> {
  const text = await vscode.workspace.fs.readFile(script);
  const address = URL.createObjectURL(new Blob([Uint8Array.from(text)], { type: "text/javascript" }));
  return new Worker(address);
}
