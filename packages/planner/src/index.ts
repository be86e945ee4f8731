// The plan

export type {
  FoldGrain,
  FormMarks,
  LayoutMarks,
  PaperGroup,
  PaperLeftover,
  PaperUse,
  Plan,
  SheetMarks,
  Shortage,
} from "./plan-model.js";
