export type { OutlineNote, OutlineNoteCode } from "./outline-note.js";
export {
  type OutlineFault,
  type OutlineFaultCode,
  type OutlinePlace,
  OutlineReadError,
} from "./outline-read-error.js";
export { type OutlineReadOptions, READ_LIMITS, type ReadLimits } from "./read-options.js";
export {
  type OutlinesOfPathOptions,
  outlinesOfPath,
  type ReadOutlines,
  readOutlines,
} from "./read-outlines.js";
