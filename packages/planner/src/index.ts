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

// The cards and papers that a plan tells of

export type {
  Card,
  CardLayer,
  Expansion,
  Face,
  Flat,
  Grain,
  NoPaper,
  Offcut,
  Paper,
  PaperDesign,
  PaperWeight,
  Pattern,
  Piece,
  PieceForm,
  Rounding,
  Score,
  Sides,
} from "@sheetwright/cards";
