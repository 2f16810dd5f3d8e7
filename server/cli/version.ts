/** The version, from the package that this was built from. */
import manifest from "../../package.json" with { type: "json" };

export const version: string = manifest.version;
