/** Something that the user has to put right on the command line; told in one line, exit code 2. */
export class UsageError extends Error {}
