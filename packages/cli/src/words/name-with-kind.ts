import type { Item } from "@sheetwright/planner";

/** What a ribbon or a tape is called: `copper ribbon`, `washi tape`; its kind is told once, whatever the capitals. */
export function nameWithKind({ name, kind }: Pick<Item, "name" | "kind">): string {
  return name.toLowerCase().includes(kind) ? name : `${name} ${kind}`;
}
