/** `bellcrank/panelCurves`: the curves of a car or set-up, for the panel's second tab. */
import { panelCurves as curvesOf } from "../../views/mechanism/curves.js";
import { carNamed, placesOf } from "../../views/mechanism/of-file.js";
import type { Feature } from "../feature.js";
import type { PanelCurvesAnswer, PanelCurvesMethod, PanelCurvesParams } from "../protocol-panel.js";

const method: PanelCurvesMethod = "bellcrank/panelCurves";

export const panelCurves: Feature = {
  capabilities: {},
  attach(connection, session) {
    connection.onRequest(method, ({ uri, name }: PanelCurvesParams): PanelCurvesAnswer => {
      const file = session.file(uri);
      const car = carNamed(file, name);
      return { curves: car === undefined ? [] : curvesOf(car, placesOf(file)) };
    });
  },
};
