/** How a command says with which code the process is to end. */
export type Ends = (exitCode: number) => void;
