/**
 * Two suites: `engine` is all that needs nothing but Node; `editor` drives a real editor and is kept
 * apart, since it needs a built extension and a browser or a display.
 */
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "engine",
          include: ["test/**/*.test.ts"],
          exclude: ["test/editor/**", "test/bench/**"],
          // Tests of the command line and of the server run what is shipped.
          globalSetup: ["test/support/built.ts"],
          // Two cores are all that can be counted on, and they may be shared: both are used, and nobody is hurried.
          maxWorkers: 2,
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: "editor",
          include: ["test/editor/**/*.test.ts"],
          // One editor for the whole suite; installing it may have to come first.
          testTimeout: 120_000,
          hookTimeout: 900_000,
          // An editor on a busy machine may lose a key; what is wrong is wrong every time.
          retry: 1,
          fileParallelism: false,
        },
      },
    ],
  },
});
