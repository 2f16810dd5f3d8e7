/**
 * Resolved files with their cars, figures and findings, each kept while everything that it was
 * made from is the same object.
 */
import { parse } from "../../grammar/index.js";
import { analyseCar, type CarJoining } from "../analyses/analyse-car.js";
import type { CarCases } from "../analyses/equilibrium/results.js";
import type { CarKerbs } from "../analyses/kerb/car-kerbs.js";
import type { CarRide } from "../analyses/whole-car/car-ride.js";
import type { CarAnalysis } from "../analyses/results.js";
import { massesOfCar } from "../assemble/masses.js";
import type { CheckedCar, RuleContext, Varied } from "../findings/context.js";
import type { Finding, TextEdit } from "../findings/finding.js";
import { checkedElements } from "../findings/axle-parts.js";
import { applyEdits, fixesOf, runRules, safeEdits } from "../findings/run.js";
import type { CarModel } from "../model/car.js";
import { keepsSeats } from "../model/keeps-seats.js";
import { resolveFile, ResolveCache } from "../model/resolve.js";
import type { ResolvedCar, ResolvedFile } from "../model/resolved-file.js";
import type { AxleAnalyses } from "./axle-analyses.js";
import { keptAxles, type KeptAxles } from "./kept-seats.js";
import { ChangedTexts, type Source, type Texts } from "./texts.js";
import { complaintsOf, variationText } from "./variation.js";
import type { FileView } from "./workspace.js";

interface Kept {
  readonly view: FileView;
  readonly rests: readonly (readonly [uri: string, source: Source])[];
  readonly reads: readonly (readonly [uri: string, text: string | undefined])[];
}

const NOBODY: ReadonlySet<string> = new Set();

/** The car or set-up whose seats were set: what keeps seats itself has them from further back. */
const trimmedBefore = (car: CheckedCar): CheckedCar =>
  keepsSeats(car.model) && car.base !== undefined ? trimmedBefore(car.base) : car;

/** What joins the axles, with the axles where they stand. */
const joiningOn = (joining: CarJoining | undefined, kept: KeptAxles | undefined): CarJoining | undefined =>
  joining && kept ? { ...joining, axles: kept } : joining;

export class CheckedFiles {
  readonly #texts: Texts;
  readonly #analyses: AxleAnalyses;
  readonly #resolveCache: ResolveCache;
  /** Of set-ups that stand in no file: one rests on what the last one rested on. */
  readonly #variations = new ResolveCache();
  readonly #kept = new Map<string, Kept>();
  /** The same the other way round: asked for at every change, when a thousand set-ups may be open. */
  readonly #dependents = new Map<string, Set<string>>();
  readonly #cars = new WeakMap<CarModel, CheckedCar>();

  constructor(texts: Texts, analyses: AxleAnalyses, resolveCache = new ResolveCache()) {
    this.#texts = texts;
    this.#analyses = analyses;
    this.#resolveCache = resolveCache;
  }

  view(uri: string): FileView {
    const kept = this.#kept.get(uri);
    if (kept !== undefined && this.#holds(kept)) return kept.view;
    const made = this.#make(uri);
    this.drop(uri);
    this.#kept.set(uri, made);
    for (const [other] of [...made.rests, ...made.reads]) this.#addDependent(other, uri);
    return made.view;
  }

  /** Files whose views were made from this one, as far as one was made: without making it anew. */
  dependents(uri: string): ReadonlySet<string> {
    return this.#dependents.get(uri) ?? NOBODY;
  }

  drop(uri: string): void {
    const kept = this.#kept.get(uri);
    if (kept === undefined) return;
    this.#kept.delete(uri);
    for (const [other] of [...kept.rests, ...kept.reads]) this.#removeDependent(other, uri);
  }

  #addDependent(on: string, uri: string): void {
    const known = this.#dependents.get(on);
    if (known === undefined) this.#dependents.set(on, new Set([uri]));
    else known.add(uri);
  }

  #removeDependent(on: string, uri: string): void {
    const known = this.#dependents.get(on);
    known?.delete(uri);
    if (known?.size === 0) this.#dependents.delete(on);
  }

  #holds({ rests, reads }: Kept): boolean {
    return (
      rests.every(([uri, source]) => this.#texts.source(uri) === source) &&
      reads.every(([uri, text]) => this.#textOf(uri) === text)
    );
  }

  #textOf(uri: string): string | undefined {
    const read = this.#texts.read(uri);
    return "text" in read ? read.text : undefined;
  }

  #make(uri: string): Kept {
    const resolved = resolveFile(
      uri,
      (other) => this.#texts.source(other),
      (other) => this.#texts.read(other),
      this.#resolveCache,
    );
    return {
      view: this.#viewOf(uri, resolved),
      rests: resolved.uses.map((other) => [other, this.#texts.source(other)] as const),
      reads: resolved.readsText.map((other) => [other, this.#textOf(other)] as const),
    };
  }

  #viewOf(uri: string, resolved: ResolvedFile): FileView {
    const context = this.#contextOf(uri, resolved);
    let findings: readonly Finding[] | undefined;
    const all = (): readonly Finding[] => (findings ??= runRules(context));
    return {
      uri,
      text: context.text,
      parsed: context.parsed,
      problems: context.problems,
      cars: context.cars,
      get symbols() {
        return resolved.symbols;
      },
      uses: resolved.uses,
      readsText: resolved.readsText,
      textOf: (other) => this.#textOf(other),
      parsedOf: (other) => this.#parsedOf(other),
      findings: all,
      fixes: (finding) => fixesOf(finding, context),
      safeEdits: () => safeEdits(all(), context),
      vary: (of, lines) => context.vary(of, lines),
    };
  }

  #contextOf(uri: string, resolved: ResolvedFile): RuleContext {
    return {
      uri,
      text: this.#textOf(uri) ?? "",
      parsed: this.#parsedOf(uri) ?? parse(""),
      problems: resolved.problems,
      cars: resolved.cars.map((car) => this.#checked(car)),
      uses: resolved.uses,
      parsedOf: (other) => this.#parsedOf(other),
      textOf: (other) => this.#textOf(other),
      retry: (edits) => this.#retried(uri, edits),
      vary: (of, lines) => this.#varied(uri, of, lines),
    };
  }

  #parsedOf(uri: string): FileView["parsed"] | undefined {
    const source = this.#texts.source(uri);
    return "parsed" in source ? source.parsed : undefined;
  }

  #checked(model: CarModel): CheckedCar {
    const kept = this.#cars.get(model);
    if (kept !== undefined) return kept;
    const made = this.#checkedCar(model);
    this.#cars.set(model, made);
    return made;
  }

  #checkedCar(model: CarModel): CheckedCar {
    const { baseModel } = model as Partial<ResolvedCar>;
    const analyses = this.#analyses;
    let analysis: CarAnalysis | undefined;
    let elements: CheckedCar["elements"] | undefined;
    let cases: CarCases | undefined;
    let ride: CarRide | undefined;
    let kerbs: CarKerbs | undefined;
    const base = baseModel === undefined ? undefined : this.#checked(baseModel);
    let kept: KeptAxles | undefined;
    const onSeats = (): KeptAxles | undefined =>
      base === undefined
        ? undefined
        : (kept ??= keptAxles(model, () => trimmedBefore(base).analysis, analyses.joining(model)));
    return {
      model,
      get cases() {
        // Kept there for the cars that are worked on: a thousand open set-ups would fill the memory.
        return onSeats() === undefined ? analyses.cases(model) : (cases ??= analyses.cases(model, onSeats()));
      },
      get ride() {
        return onSeats() === undefined ? analyses.ride(model) : (ride ??= analyses.ride(model, onSeats()));
      },
      get kerbs() {
        return onSeats() === undefined ? analyses.kerbs(model) : (kerbs ??= analyses.kerbs(model, onSeats()));
      },
      get elements() {
        return (elements ??= checkedElements(this));
      },
      base,
      mechanism(name) {
        const axle = model.axles[name];
        return axle && analyses.mechanism(axle, model);
      },
      keptWith: (figures, name, make) => analyses.keptWith(figures, name, make),
      get analysis() {
        return (analysis ??= analyseCar(
          model,
          (axle) => analyses.of(axle, model, onSeats()),
          joiningOn(analyses.joining(model), onSeats()),
          massesOfCar(model),
          this.cases,
          this.ride,
        ));
      },
    };
  }

  #retried(uri: string, edits: Parameters<RuleContext["retry"]>[0]): RuleContext {
    const changed = new Map<string, string>();
    for (const other of new Set(edits.map((edit) => edit.uri))) {
      const own = edits
        .filter((edit) => edit.uri === other)
        .map((edit): TextEdit => ({ uri: other, span: edit, newText: edit.newText }));
      changed.set(other, applyEdits(this.#textOf(other) ?? "", own));
    }
    const files = new CheckedFiles(new ChangedTexts(this.#texts, changed), this.#analyses);
    return files.context(uri);
  }

  #varied(uri: string, of: string, lines: readonly string[]): Varied {
    const { at, text, name } = variationText(uri, this.#textOf(uri) ?? "", of, lines);
    const files = new CheckedFiles(
      new ChangedTexts(this.#texts, new Map([[at, text]])),
      this.#analyses,
      this.#variations,
    );
    const context = files.context(at);
    return {
      uri: at,
      car: context.cars.find(({ model }) => model.setup === name),
      complaints: complaintsOf(context),
    };
  }

  context(uri: string): RuleContext {
    const resolved = resolveFile(
      uri,
      (other) => this.#texts.source(other),
      (other) => this.#texts.read(other),
      this.#resolveCache,
    );
    return this.#contextOf(uri, resolved);
  }
}
