/**
 * The flags of Node under which the language server runs. No import of the editor here, so that
 * the bench can start the server exactly as the client does.
 */

/**
 * A small young generation keeps resident memory from growing between collections, at the price
 * of collecting more often; the ceiling on the old one makes V8 collect long before the machine feels it. More than one helping
 * thread costs more than it saves on so small a heap: their memory, and the waiting for one another at every collection.
 */
export const SERVER_MEMORY_FLAGS: readonly string[] = [
  "--min-semi-space-size=8",
  "--max-semi-space-size=8",
  "--max-old-space-size=512",
  "--v8-pool-size=1",
];
