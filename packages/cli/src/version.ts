// biome-ignore lint/correctness/useImportExtensions: JSON keeps its own extension.
import packageJson from "../package.json" with { type: "json" };

/** Version of this package. */
export const VERSION: string = packageJson.version;
