/** A question of which at most one is on its way: asked again meanwhile, it is asked once more when the answer is here. */
import * as vscode from "vscode";

export class Asked {
  readonly #ask: () => Promise<void>;
  #underWay = false;
  #stale = false;

  constructor(ask: () => Promise<void>) {
    this.#ask = ask;
  }

  again(): void {
    this.#stale = true;
    if (!this.#underWay) void this.#run();
  }

  async #run(): Promise<void> {
    this.#underWay = true;
    try {
      while (this.#stale) {
        this.#stale = false;
        await this.#ask();
      }
    } catch (error) {
      // A server that stopped meanwhile: asked again as soon as it runs. Everything else is for the user to see.
      if (!isStopped(error)) void vscode.window.showErrorMessage(`The mechanism panel had no answer: ${String(error)}`);
    } finally {
      this.#underWay = false;
    }
  }
}

const STOPPED = /stopped|disposed|not running|connection|cancel/i;

const isStopped = (error: unknown): boolean => STOPPED.test(String(error));
