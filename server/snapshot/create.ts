/**
 * The workspace: ties texts, resolver, analyses and rules together and remembers what still holds.
 *
 * What is kept, and when it goes stale:
 * - a syntax tree, while its text is the same;
 * - a resolved file, while every tree and table that it rests on is the same object;
 * - an axle's analysis, for as long as some car has exactly those numbers (`axleKey`).
 */
import { kinematics } from "../analyses/kinematics.js";
import { assembleAxle } from "../assemble/assemble.js";
import { AxleAnalyses } from "./axle-analyses.js";
import { CheckedFiles } from "./checked-files.js";
import { ChangedTexts, DocumentTexts } from "./texts.js";
import type { Host, Workspace } from "./workspace.js";

export function createWorkspace(host: Host): Workspace {
  const texts = new DocumentTexts(host);
  const analyses = new AxleAnalyses();
  const files = new CheckedFiles(texts, analyses);
  return {
    set: (uri, text) => texts.set(uri, text),
    unset(uri) {
      texts.unset(uri);
      files.drop(uri);
    },
    forget: (uri) => texts.forget(uri),
    file: (uri) => files.view(uri),
    release(uri) {
      if (!texts.isOpen(uri)) files.drop(uri);
    },
    open: () => texts.open(),
    isOpen: (uri) => texts.isOpen(uri),
    dependents: (uri) => [...new Set([uri, ...files.dependents(uri)])].filter((other) => texts.isOpen(other)),
    changed(changed) {
      const other = new CheckedFiles(new ChangedTexts(texts, changed), analyses);
      return (uri) => other.context(uri);
    },
    kinematics(car, axle, heaves, rolls) {
      const model = car.axles[axle];
      return model === undefined ? [] : kinematics(assembleAxle(model, car), heaves, rolls);
    },
  };
}
