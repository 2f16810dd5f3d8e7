/**
 * A request that is held open, against a world that changes under it in any order: as soon as the world stands still, what the
 * client holds is what it would be told anew.
 */
import fc from "fast-check";
import { expect, it } from "vitest";
import { type FileReport, type Looked, WorkspacePull } from "../../server/lsp/pull/workspace-pull.js";

const NAMES = ["a", "b", "c", "d"] as const;
type Name = (typeof NAMES)[number];

/** `a` rests on nothing, each of the others on the one before it. */
const restsOf = (name: Name): readonly Name[] => NAMES.slice(0, NAMES.indexOf(name) + 1);

class World {
  readonly text = new Map<Name, number>(NAMES.map((name) => [name, 0]));
  readonly open = new Set<Name>();
  covers = true;

  /** What is said of a file: something about its own text and of those that it rests on. */
  said(name: Name): string {
    return restsOf(name)
      .map((other) => this.text.get(other) ?? "missing")
      .join(" ");
  }

  uris(): readonly Name[] {
    return this.covers ? NAMES.filter((name) => this.text.has(name) || this.open.has(name)) : [];
  }

  looked(name: Name): Looked {
    if (this.open.has(name)) return { report: { kind: "full", resultId: "published", items: [] }, rests: [] };
    const message = this.said(name);
    const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    return { report: { kind: "full", resultId: message, items: [{ range, message }] }, rests: restsOf(name) };
  }
}

type Step = (world: World, pull: WorkspacePull) => void;

const nameOf = fc.constantFrom(...NAMES);
const edit = nameOf.map(
  (name): Step =>
    (world, pull) => {
      world.text.set(name, (world.text.get(name) ?? 0) + 1);
      pull.changed([name]);
    },
);
const undo = nameOf.map(
  (name): Step =>
    (world, pull) => {
      world.text.set(name, 0);
      pull.changed([name]);
    },
);
const remove = nameOf.map(
  (name): Step =>
    (world, pull) => {
      world.text.delete(name);
      pull.changed([name]);
    },
);
const toggle = nameOf.map(
  (name): Step =>
    (world, pull) => {
      if (!world.open.delete(name)) world.open.add(name);
      pull.changed([name]);
    },
);
const scope = fc.constant<Step>((world, pull) => {
  world.covers = !world.covers;
  pull.restart();
});
const pause = fc.nat(6);

it("the client holds what it would be told anew, whatever happened meanwhile", async () => {
  const steps = fc.array(fc.tuple(fc.oneof(edit, undo, remove, toggle, scope), pause), { maxLength: 25 });
  await fc.assert(
    fc.asyncProperty(steps, fc.nat(4), async (taken, slowness) => {
      const world = new World();
      const held = new Map<string, string>();
      const send = (reports: readonly FileReport[]): void => {
        for (const report of reports)
          if (report.kind === "full")
            held.set(
              report.uri,
              report.items.map(({ message }) => (typeof message === "string" ? message : message.value)).join(),
            );
      };
      const pull = new WorkspacePull(
        {
          uris: () => world.uris(),
          async look(uri) {
            await turns(slowness);
            return world.looked(uri as Name);
          },
        },
        [],
      );
      const served = serve(pull, send);
      for (const [step, wait] of taken) {
        step(world, pull);
        for (const name of world.covers ? world.open : [])
          send(pull.take(new Map([[name, world.looked(name).report]])));
        await turns(wait);
      }
      await turns(200);
      pull.end();
      await served;
      for (const name of NAMES) {
        const isTold = world.uris().includes(name) && !world.open.has(name);
        expect(held.get(name) ?? "").toBe(isTold ? world.said(name) : "");
      }
    }),
    { numRuns: 200 },
  );
});

async function serve(pull: WorkspacePull, send: (reports: readonly FileReport[]) => void): Promise<void> {
  while (!pull.ended) {
    await pull.round(send);
    await pull.change();
  }
}

async function turns(count: number): Promise<void> {
  for (let turn = 0; turn < count; turn++) await Promise.resolve();
}
