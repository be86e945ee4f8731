import type { Paper } from "@sheetwright/cards";

/** What a reader sees of each design of the papers, by its id: `Night blue`, `Stars: comets`. */
export function designNames(papers: readonly Paper[]): ReadonlyMap<string, string> {
  return new Map(
    papers.flatMap(({ name, material, designs }) =>
      designs.map((design) => [design.id, material === "pad" ? `${name}: ${design.name}` : name] as const),
    ),
  );
}
