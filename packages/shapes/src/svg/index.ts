export type { OutlineNote, OutlineNoteCode } from "./outline-note.js";
export {
  type OutlinePlace,
  OutlineReadError,
  type OutlineReadFault,
  type OutlineReadFaultCode,
} from "./outline-read-error.js";
export { type OutlineReadOptions, READ_LIMITS, type ReadLimits } from "./read-options.js";
export {
  type OutlinesOfPathOptions,
  outlinesOfPath,
  type ReadOutlines,
  readOutlines,
} from "./read-outlines.js";
