/** The page's beginning: puts the store, the keys and the drawing together. */
import { render } from "preact";
import type { ToPage } from "../messages.js";
import { App } from "./app.js";
import { pressed } from "./keys.js";
import { type Editor, Store } from "./store.js";
import { poseInWords } from "./words.js";

declare function acquireVsCodeApi(): Editor;

const root = document.querySelector("#root");
if (root === null) throw new Error("The page has no root.");

const draw = (): void =>
  render(<App state={store.state} actions={store} chooseCar={(name) => store.chooseCar(name)} />, root);
const store: Store = new Store(acquireVsCodeApi(), draw);

window.addEventListener("message", ({ data }: MessageEvent<ToPage>) => store.hear(data));

/** Boxes that letters or arrows are for, and buttons that the space bar presses. */
const TYPES = "select, textarea, input:not([type=range])";

window.addEventListener("keydown", (event) => {
  if (!(event.target instanceof Element) || event.target.closest(TYPES) !== null) return;
  // The editor keeps the browser from undoing in the frame itself, so that this key alone arrives prevented.
  if (event.defaultPrevented && !event.ctrlKey && !event.metaKey) return;
  if (event.key === " " && event.target.closest("button") === null) {
    document.querySelector<HTMLButtonElement>("[data-play]")?.click();
    event.preventDefault();
  } else if (pressed(event, store.state, store)) event.preventDefault();
});

/** A slider speaks for itself while it moves; what it did to the rest is said when it is let go. */
window.addEventListener("change", (event) => {
  const { answer, pose } = store.state;
  if (event.target instanceof HTMLInputElement && answer?.car !== undefined) store.say(poseInWords(pose, answer.car));
});

draw();
