/** `bellcrank/moveEye`: what a drag of an eye would write, and what it would do to the axle. */
import { moveEye as moved, onWrittenSide } from "../../snapshot/move-eye.js";
import type { Feature } from "../feature.js";
import type { MoveEyeAnswer, MoveEyeMethod, MoveEyeParams } from "../protocol-panel.js";

const method: MoveEyeMethod = "bellcrank/moveEye";

export const moveEye: Feature = {
  capabilities: {},
  attach(connection, session) {
    connection.onRequest(method, ({ uri, ...asked }: MoveEyeParams): MoveEyeAnswer => {
      const file = session.file(uri);
      return moved(file, onWrittenSide(file, asked));
    });
  },
};
