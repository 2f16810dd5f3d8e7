/**
 * Keeps the page's state, tells who draws it once a frame, and talks to the extension.
 *
 * Invariant: at most one question about a held eye is on its way; the newest place is asked for when its answer is here, so that the drawing
 * never trails behind the pointer by more than one answer. Answers to older questions are dropped.
 */
import type { MoveEyeParams } from "../../../server/lsp/protocol-panel.js";
import type { FromPage, PictureFormat, ToPage } from "../messages.js";
import type { Actions } from "./actions.js";
import { pictureOf } from "./picture.js";
import { moved } from "./pose.js";
import { endsOf } from "./motions.js";
import { rangesOf } from "./scene.js";
import {
  answered,
  axlesOf,
  cursorMoved,
  type HeldEye,
  type Kept,
  kept,
  singleAxleOf,
  START,
  type State,
} from "./state.js";
import { stoppedBy } from "./words.js";

export interface Editor {
  postMessage(message: FromPage): void;
  getState(): Kept | undefined;
  setState(state: Kept): void;
}

/** Saved this long after the last change: a slider would write a hundred times a second. */
const KEEP_AFTER_MS = 250;

export class Store implements Actions {
  state: State;
  readonly #editor: Editor;
  readonly #drawn: (state: State) => void;
  #awaitsFrame = false;
  #keeping: ReturnType<typeof setTimeout> | undefined;
  #request = 0;
  #asking = false;
  #next: (() => void) | undefined;
  /** An eye was let go of, and its place is on its way into the text. */
  #writes = false;

  constructor(editor: Editor, drawn: (state: State) => void) {
    this.#editor = editor;
    this.#drawn = drawn;
    this.state = { ...START, ...editor.getState() };
    editor.postMessage({ kind: "ready", state: this.state.followed });
    if (this.state.tab === "curves") editor.postMessage({ kind: "wants-curves", wanted: true });
  }

  change(how: (state: State) => State): void {
    const before = this.state;
    this.state = how(before);
    if (this.state === before) return;
    if (this.state.tab !== before.tab)
      this.#editor.postMessage({ kind: "wants-curves", wanted: this.state.tab === "curves" });
    if (!this.#awaitsFrame) {
      this.#awaitsFrame = true;
      requestAnimationFrame(() => {
        this.#awaitsFrame = false;
        this.#drawn(this.state);
      });
    }
    clearTimeout(this.#keeping);
    this.#keeping = setTimeout(() => this.#editor.setState(kept(this.state)), KEEP_AFTER_MS);
  }

  hear(message: ToPage): void {
    switch (message.kind) {
      case "mechanism":
        this.change((old) => answered({ ...old, held: this.#asking ? old.held : undefined }, message.answer));
        return;
      case "nothing":
        this.change((old) =>
          old.answer?.car === undefined ? { ...old, nothing: message.reason } : { ...old, note: message.reason },
        );
        return;
      case "cursor":
        this.change((old) => cursorMoved(old, message.cursor));
        return;
      case "curves":
        this.change((old) => ({ ...old, curves: message.answer }));
        return;
      case "eye":
        this.#eyeAnswered(message);
        return;
      case "told":
        this.say(message.text);
    }
  }

  move: Actions["move"] = (motion, to) =>
    this.change((old) => {
      const car = old.answer?.car;
      if (car === undefined) return old;
      const corners = rangesOf(car, axlesOf(old, car), singleAxleOf(old, car));
      const ends = endsOf(motion, car, corners);
      if (ends === undefined) return old;
      const { pose, stopped } = moved(old.pose, motion, to, corners, ends);
      return { ...old, motion, pose, why: stopped && stoppedBy(stopped, car) };
    });

  say(text: string): void {
    this.change((old) => ({ ...old, said: text }));
  }

  goTo: Actions["goTo"] = (place) => {
    if (place !== undefined) this.#editor.postMessage({ kind: "go-to", place });
  };

  choose(path: string): void {
    this.change((old) => ({ ...old, chosen: path }));
  }

  chooseCar(name: string | undefined): void {
    this.change((old) => (old.followed === undefined ? old : { ...old, followed: { ...old.followed, name } }));
    this.#editor.postMessage({ kind: "choose", name });
  }

  undo(): void {
    this.#editor.postMessage({ kind: "undo" });
  }

  holdEye(eye: Omit<HeldEye, "answer">): void {
    const same = this.state.held?.point === eye.point && this.state.held.axle === eye.axle;
    this.change((old) => ({ ...old, held: { ...eye, answer: same ? old.held?.answer : undefined } }));
    this.#ask(false);
  }

  heldEye(): HeldEye | undefined {
    return this.state.held;
  }

  dropEye(): void {
    this.#writes = this.state.held !== undefined;
    this.#ask(true);
  }

  letGo(): void {
    // What was let go of to be written is written, wherever the focus goes meanwhile.
    if (this.#writes) return;
    this.#request += 1;
    this.#next = undefined;
    this.#asking = false;
    this.change((old) => ({ ...old, held: undefined, said: "Left where it was." }));
  }

  #ask(write: boolean): void {
    if (this.#asking) {
      this.#next = () => this.#ask(write);
      return;
    }
    const params = moveOf(this.state);
    if (params === undefined) return;
    this.#asking = true;
    this.#request += 1;
    this.#editor.postMessage({ kind: "move-eye", request: this.#request, params, write });
  }

  #eyeAnswered({ request, answer }: Extract<ToPage, { kind: "eye" }>): void {
    if (request !== this.#request) return;
    this.#asking = false;
    this.change((old) =>
      old.held === undefined ? old : { ...old, held: { ...old.held, answer }, why: answer.reason ?? old.why },
    );
    const next = this.#next;
    this.#next = undefined;
    if (next === undefined) this.#writes = false;
    else next();
  }

  save(format: PictureFormat): void {
    const drawings = [...document.querySelectorAll<SVGSVGElement>("svg[data-stage]")];
    const name = this.state.answer?.car?.name ?? "mechanism";
    const ground = getComputedStyle(document.body).backgroundColor;
    pictureOf(drawings, `${name}, ${this.state.view} view`, ground, format).then(
      (base64) => this.#editor.postMessage({ kind: "save", format, name, base64 }),
      (error: unknown) => this.change((old) => ({ ...old, why: `The picture could not be made: ${String(error)}` })),
    );
  }
}

function moveOf({ answer, held }: State): MoveEyeParams | undefined {
  if (answer?.car === undefined || held === undefined) return undefined;
  const { axle, side, point, to } = held;
  return { uri: answer.uri, name: answer.car.name, axle, side, point, to };
}
