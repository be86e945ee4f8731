import packageJson from "../package.json" with { type: "json" };

/** Version of this package. */
export const VERSION: string = packageJson.version;
