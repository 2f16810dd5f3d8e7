/** `bellcrank/mechanism`: what the mechanism panel draws of a car or set-up. */
import { mechanismOfFile } from "../../views/mechanism/of-file.js";
import type { Feature } from "../feature.js";
import type { MechanismAnswer, MechanismMethod, MechanismParams } from "../protocol-panel.js";

const method: MechanismMethod = "bellcrank/mechanism";

export const mechanism: Feature = {
  capabilities: {},
  attach(connection, session) {
    connection.onRequest(method, ({ uri, name }: MechanismParams): MechanismAnswer => {
      const file = session.file(uri);
      return { uri, ...mechanismOfFile(file, name) };
    });
  },
};
