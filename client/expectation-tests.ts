/**
 * The expectations of the workspace in the editor's Testing view: a file, its cars and set-ups, what each is expected
 * to do. A run asks the server; nothing is computed here.
 *
 * Files are found through the editor, so that a workspace that is not on disk is shown like one that is. Nothing is
 * asked before the view is first opened or a file is open.
 */
import * as vscode from "vscode";
import { type BaseLanguageClient, State } from "vscode-languageclient";
import type {
  ExpectationAnswer,
  ExpectationsMethod,
  ExpectationsOfCar,
  ExpectationsOfFile,
  ExpectationsParams,
  PlainRange,
} from "../server/lsp/protocol.js";
import { LANGUAGE_FILES, workspaceFiles } from "./workspace-files.js";

const METHOD: ExpectationsMethod = "bellcrank/expectations";

export function createExpectationTests(client: BaseLanguageClient): vscode.Disposable {
  const controller = vscode.tests.createTestController("bellcrank.expectations", "Bellcrank");
  const tests = new ExpectationTests(controller, client);
  const watcher = vscode.workspace.createFileSystemWatcher(LANGUAGE_FILES);
  const follow = (uri: vscode.Uri): Promise<void> => tests.changed(uri);
  controller.resolveHandler = async (item) => (item === undefined ? tests.find() : undefined);
  controller.refreshHandler = async () => tests.find();
  controller.createRunProfile(
    "Judge",
    vscode.TestRunProfileKind.Run,
    (request, cancel) => tests.run(request, cancel),
    true,
  );
  return vscode.Disposable.from(
    controller,
    watcher,
    watcher.onDidCreate(follow),
    watcher.onDidChange(follow),
    watcher.onDidDelete(follow),
    // The server publishes after every change, and for every open file that rests on what changed.
    vscode.languages.onDidChangeDiagnostics(({ uris }) => void Promise.all(uris.filter(isOurs).map(follow))),
    client.onDidChangeState(({ newState }) => newState === State.Running && void tests.again()),
  );
}

const isOurs = ({ path }: vscode.Uri): boolean => path.endsWith(".crank");

class ExpectationTests {
  readonly #controller: vscode.TestController;
  readonly #client: BaseLanguageClient;
  /** What the server said last of each file in the tree. */
  readonly #files = new Map<string, ExpectationsOfFile>();
  readonly #answers = new WeakMap<vscode.TestItem, ExpectationAnswer>();

  constructor(controller: vscode.TestController, client: BaseLanguageClient) {
    this.#controller = controller;
    this.#client = client;
  }

  async find(): Promise<void> {
    const found = await workspaceFiles(LANGUAGE_FILES);
    for (const uri of found) await this.#refresh(uri);
  }

  async again(): Promise<void> {
    for (const uri of this.#files.keys()) await this.#refresh(vscode.Uri.parse(uri));
  }

  /** The file itself, then what is in the tree and rests on it. */
  async changed(uri: vscode.Uri): Promise<void> {
    const changed = uri.toString();
    const resting = [...this.#files].filter(([file, { uses }]) => file !== changed && uses.includes(changed));
    await this.#refresh(uri);
    for (const [file] of resting) await this.#refresh(vscode.Uri.parse(file));
  }

  async run(request: vscode.TestRunRequest, cancel: vscode.CancellationToken): Promise<void> {
    const run = this.#controller.createTestRun(request);
    const roots = request.include ?? [...this.#controller.items].map(([, item]) => item);
    // Asked anew, so that what is judged is what stands in the files now; items keep their ids through it.
    const ids = new Set(leavesOf(roots).map(({ id }) => id));
    for (const uri of new Set(roots.map((item) => fileOf(item).id))) {
      if (cancel.isCancellationRequested) break;
      await this.#refresh(vscode.Uri.parse(uri));
      const file = this.#controller.items.get(uri);
      const leaves = file === undefined ? [] : leavesOf([file]).filter(({ id }) => ids.has(id));
      for (const item of leaves) if (!isExcluded(item, request.exclude)) this.#report(run, item);
    }
    run.end();
  }

  #report(run: vscode.TestRun, item: vscode.TestItem): void {
    const answer = this.#answers.get(item);
    if (answer === undefined) return;
    run.appendOutput(`${answer.message}\r\n`, undefined, item);
    if (answer.verdict === "met") run.passed(item);
    else if (answer.verdict === "missed") run.failed(item, failure(answer));
    else run.skipped(item);
  }

  async #refresh(uri: vscode.Uri): Promise<void> {
    const params: ExpectationsParams = { uri: uri.toString() };
    const answer = await this.#ask(params);
    if (answer === undefined) return;
    if (answer.cars.length === 0) {
      this.#files.delete(params.uri);
      this.#controller.items.delete(params.uri);
      return;
    }
    this.#files.set(params.uri, answer);
    const file = this.#item(this.#controller.items, params.uri, vscode.workspace.asRelativePath(uri), uri);
    file.children.replace(answer.cars.map((car) => this.#carItem(file, uri, car)));
  }

  /** A server that stops meanwhile leaves the tree as it was; when it runs again, everything is asked anew. */
  async #ask(params: ExpectationsParams): Promise<ExpectationsOfFile | undefined> {
    if (this.#client.state !== State.Running) return undefined;
    try {
      return await this.#client.sendRequest<ExpectationsOfFile>(METHOD, params);
    } catch (error) {
      this.#client.error("The expectations of a file were not answered.", error, false);
      return undefined;
    }
  }

  #carItem(file: vscode.TestItem, uri: vscode.Uri, { name, range, expectations }: ExpectationsOfCar): vscode.TestItem {
    const car = this.#item(file.children, `${file.id}#${name}`, name, uri);
    car.range = rangeOf(range);
    car.children.replace(
      expectations.map((one) => {
        const item = this.#item(car.children, `${car.id}#${one.text}`, one.text, vscode.Uri.parse(one.uri));
        item.range = rangeOf(one.range);
        // Not as its description: a screen reader is told that instead of the label.
        item.label = `${one.text}: ${one.actual ?? "not judged"}`;
        this.#answers.set(item, one);
        return item;
      }),
    );
    return car;
  }

  /** The item that is there already keeps the result of its last run; its place can change, its file cannot. */
  #item(among: vscode.TestItemCollection, id: string, label: string, uri: vscode.Uri): vscode.TestItem {
    const known = among.get(id);
    if (known !== undefined && known.uri?.toString() === uri.toString()) return known;
    const item = this.#controller.createTestItem(id, label, uri);
    among.add(item);
    return item;
  }
}

/** Without an output that is expected: the editor would show only that beside the line, and not by how much it is missed. */
function failure({ message, uri, range }: ExpectationAnswer): vscode.TestMessage {
  const told = new vscode.TestMessage(message);
  told.location = new vscode.Location(vscode.Uri.parse(uri), rangeOf(range));
  return told;
}

function leavesOf(items: readonly vscode.TestItem[]): readonly vscode.TestItem[] {
  return items.flatMap((item) =>
    item.children.size === 0 ? [item] : leavesOf([...item.children].map(([, child]) => child)),
  );
}

const fileOf = (item: vscode.TestItem): vscode.TestItem => (item.parent === undefined ? item : fileOf(item.parent));

const isExcluded = (item: vscode.TestItem, excluded: readonly vscode.TestItem[] = []): boolean =>
  excluded.includes(item) || (item.parent !== undefined && isExcluded(item.parent, excluded));

const rangeOf = ({ start, end }: PlainRange): vscode.Range =>
  new vscode.Range(start.line, start.character, end.line, end.character);
