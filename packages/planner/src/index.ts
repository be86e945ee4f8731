// The plan

export type { LengthCount, RollCut } from "./items/cut-rolls.js";
export { type PlanAsyncOptions, type PlanOptions, plan, planAsync, planSteps } from "./plan.js";
export type {
  CompleteCopies,
  FoldGrain,
  FormMarks,
  ItemUse,
  LayoutMarks,
  PaperGroup,
  PaperLeftover,
  PaperStrip,
  PaperUse,
  Plan,
  PlanCosts,
  SheetMarks,
  Shortage,
} from "./plan-model.js";
export type { DriveOptions, Packer } from "./search/drive-search.js";
export type { PlanProgress } from "./search/group-search.js";

// Its proof

export { type PlanFinding, type PlanFindingCode, planFindingCodes } from "./verify/plan-finding.js";
export { verifyPlan } from "./verify/verify-plan.js";

// Sizes of sheets compared

export { type CompareOptions, type ComparisonCase, compareCase } from "./compare/compare-case.js";
export { compareSizes, comparisonOf } from "./compare/compare-sizes.js";
export type { ComparedSize, Comparison, ComparisonRow } from "./compare/comparison.js";
export { pieceCases } from "./compare/piece-cases.js";
export { projectCases } from "./compare/project-cases.js";

// The papers on hand, and what cutting makes of them

export { applyStockChange, type ChangedStock } from "./stock/apply-stock-change.js";
export { type ContinuedProject, continueProject } from "./stock/continue-project.js";
export { type LayoutProgress, wholePlan } from "./stock/layout-progress.js";
export { piecesCut } from "./stock/pieces-cut.js";
export type { Stock, StockFault, StockPaper } from "./stock/stock.js";
export { type StockChange, stockChange } from "./stock/stock-change.js";
export { stockOfProject } from "./stock/stock-of-project.js";
export { type StockedProject, withStock } from "./stock/with-stock.js";

// Bags that all hold the same

export { withBags } from "./kits/with-bags.js";

// What a project needs

export { asManyAsNeeded } from "./need/as-many-as-needed.js";
export type { DesignNeed, ItemNeed, NamedItemNeed, Need, PaperNeed } from "./need/need.js";
export { needOf } from "./need/need-of.js";

// What it costs

export type { CardPrice, GuestPrice, Price, PriceKind, PricePart } from "./price/price.js";
export { priceOf } from "./price/price-of.js";

// Changes that save

export { findSavings, type SavingsOptions } from "./savings/find-savings.js";
export type { Saving, SavingFigures, Savings } from "./savings/savings.js";

// What can be made besides, from what is left

export type { Bonus, CardBonus, DesignLeft, ItemLeft, PanelBonus, PanelWish } from "./bonus/bonus.js";
export { type BonusOptions, bonusOf } from "./bonus/bonus-of.js";

// How many complete sets the papers give

export { completeSets } from "./sets/complete-sets.js";
export type { ImpossibleSets, RunOut, SetCard, SetCount, SetsWithMore } from "./sets/set-count.js";
export { withSets } from "./sets/set-of-cards.js";

// What is told of it

export { cardsAsCut } from "./cards-as-cut.js";
export { layoutMarks } from "./layout-marks.js";
export { copiesCut } from "./totals/copies-cut.js";
export { findLeftovers, type Leftover } from "./totals/find-leftovers.js";
export { groupBound } from "./totals/group-bound.js";

// The cards and papers that a plan tells of

export type {
  Card,
  CardLayer,
  CardSeam,
  CardSurface,
  CopiesFor,
  Expansion,
  Face,
  Flat,
  FoldDirection,
  Grain,
  GrainNeed,
  Item,
  Join,
  NoPaper,
  Offcut,
  Paper,
  PaperDesign,
  PaperWeight,
  Pattern,
  Piece,
  PieceDie,
  PieceForm,
  Reveal,
  Rounding,
  Score,
  Sides,
  Slit,
  StitchMarks,
  SurfaceName,
} from "@sheetwright/cards";

// What its groups are made of

export type { Effort, Packing, Problem, Progress } from "@sheetwright/packing";
