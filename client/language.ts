/** The language's id, as package.json declares it; settings and findings go by the same name. */
export const LANGUAGE = "bellcrank";
