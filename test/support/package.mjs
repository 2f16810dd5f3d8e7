/**
 * Packs what was built as an extension, with times of no meaning, so that the same sources give the same bytes.
 *
 *   node test/support/package.mjs [FOLDER or FILE]
 */
import { createVSIX } from "@vscode/vsce";

// The first moment that such an archive can tell is in 1980; of the time zone of the machine nothing may be seen.
process.env.SOURCE_DATE_EPOCH = String(Date.UTC(2000, 0, 1) / 1000);
process.env.TZ = "UTC";

const [packagePath = "dist/"] = process.argv.slice(2);
await createVSIX({ packagePath, dependencies: false, allowMissingRepository: true, rewriteRelativeLinks: false });
