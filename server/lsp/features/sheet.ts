/** `bellcrank/sheet`: the setup sheet of a car or set-up as it stands in the editor, saved or not. */
import { picturesOf } from "../../views/sheet/pictures.js";
import { sheetHtml } from "../../views/sheet/html.js";
import { localTime } from "../../views/sheet/local-time.js";
import { setupSheet } from "../../views/sheet/sheet.js";
import type { Feature } from "../feature.js";
import type { SheetMethod, SheetPage, SheetParams } from "../protocol-start.js";

const method: SheetMethod = "bellcrank/sheet";

export const sheet: Feature = {
  capabilities: {},
  attach(connection, session) {
    connection.onRequest(method, ({ uri, name }: SheetParams): SheetPage | null => {
      const file = session.file(uri);
      const car =
        name === undefined ? file.cars[0] : file.cars.find(({ model }) => (model.setup ?? model.name) === name);
      if (car === undefined) return null;
      const made = setupSheet(car, file.findings());
      // The editor's text need not be what is committed: the command line names the commit.
      const origin = {
        file: decodeURIComponent(uri.split("/").at(-1) ?? uri),
        commit: undefined,
        time: localTime(new Date()),
      };
      return { name: car.model.setup ?? car.model.name, html: sheetHtml(made, origin, picturesOf(car, made)) };
    });
  },
};
