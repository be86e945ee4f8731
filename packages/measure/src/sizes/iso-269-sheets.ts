import type { SheetRow } from "./size-rows.js";

const ISO_269 = "ISO 269, sizes of the C series (as copied in an encyclopaedia)";

/** The C series as bare sizes. As envelopes, with the flap closed, they are `env-iso-c4` and so on. */
export const ISO_269_SHEETS = [
  { id: "iso-c0", name: "ISO C0 sheet", short: 917, long: 1297, unit: "mm", source: ISO_269 },
  { id: "iso-c1", name: "ISO C1 sheet", short: 648, long: 917, unit: "mm", source: ISO_269 },
  { id: "iso-c2", name: "ISO C2 sheet", short: 458, long: 648, unit: "mm", source: ISO_269 },
  { id: "iso-c3", name: "ISO C3 sheet", short: 324, long: 458, unit: "mm", source: ISO_269 },
  { id: "iso-c4", name: "ISO C4 sheet", short: 229, long: 324, unit: "mm", source: ISO_269 },
  { id: "iso-c5", name: "ISO C5 sheet", short: 162, long: 229, unit: "mm", source: ISO_269 },
  { id: "iso-c6", name: "ISO C6 sheet", short: 114, long: 162, unit: "mm", source: ISO_269 },
  { id: "iso-c7", name: "ISO C7 sheet", short: 81, long: 114, unit: "mm", source: ISO_269 },
  { id: "iso-c8", name: "ISO C8 sheet", short: 57, long: 81, unit: "mm", source: ISO_269 },
  { id: "iso-c9", name: "ISO C9 sheet", short: 40, long: 57, unit: "mm", source: ISO_269 },
  { id: "iso-c10", name: "ISO C10 sheet", short: 28, long: 40, unit: "mm", source: ISO_269 },
] as const satisfies readonly SheetRow[];
