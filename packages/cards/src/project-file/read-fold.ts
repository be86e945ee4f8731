import { formatLength, inches, millimetres, type Size } from "@sheetwright/measure";
import { type FoldWish, flatsOf, frontOfPiece, usualFold } from "../fold/flats.js";
import { type FoldMeasures, type NamedFold, SHORTER_INSIDE } from "../fold/fold-panels.js";
import type { Flat, FoldDirection } from "../project.js";
import type { Written } from "./check-structure.js";
import { readLength } from "./read-measures.js";
import type { Reading } from "./reading.js";
import { listWords } from "./say-value.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

type WrittenFold = Written<NonNullable<ProjectFile["cards"][number]["fold"]>>;
type WrittenFoldKeys = Exclude<WrittenFold, string>;

/** Panels of an accordion or a roll. */
const FEWEST_PANELS = { accordion: 2, roll: 3 } as const;
/**
 * What a panel that folds inside others is shorter by: 1/16 in, on cover-weight paper 1/8 in (print-finishing folding
 * guides); in the metric trade 1.5 and 3 mm.
 */
const SHORTER = {
  in: { text: SHORTER_INSIDE, cover: inches(1 / 8) },
  mm: { text: millimetres(1.5), cover: millimetres(3) },
} as const;

/** What a card is folded from. */
export interface ReadFold {
  readonly front: Size;
  readonly flats: readonly Flat[];
}

/** What the fold of a card hangs on besides what the maker says of it. */
export interface FoldSetting {
  /** The usual fold of the format; `null` for a card without one. */
  readonly usual: "side" | "top" | null;
  /** Whether the base is cut from cover-weight paper, which takes more room when it is folded inside. */
  readonly isCover: boolean;
}

/** Reads how a card with a given front is folded. */
export function readFold(
  fold: WrittenFold | undefined,
  front: Size,
  setting: FoldSetting,
  path: string,
  reading: Reading,
): ReadFold {
  const usual = setting.usual ?? usualFold(front);
  const wish = readWish(fold, usual, setting, path, reading);
  const flats = flatsOf({ front, fold: wish });
  if (flats.every(({ panels }) => panels.every((panel) => panel > 0))) return { front, flats };
  reportVanishing(flats, path, reading);
  return { front, flats: flatsOf({ front, fold: usual }) };
}

/** Reads how a card is folded whose flat has a size of its own: the front is what the fold makes of it. */
export function readFoldOfPiece(
  fold: WrittenFold | undefined,
  piece: Size,
  setting: FoldSetting,
  path: string,
  reading: Reading,
): ReadFold {
  const wish = readWish(fold, "side", setting, path, reading);
  const keys = typeof wish === "string" ? { kind: wish } : wish;
  const other = { front: piece, flats: flatsOf({ front: piece, fold: "flat" }) };
  if (keys.kind === "own" || keys.kind === "either") {
    const message =
      keys.kind === "own"
        ? "Panels of their own make up the flat by themselves. Leave flat out and give the size of the closed card."
        : "A flat of its own is folded in one way. Write side or top, or give the size of the closed card instead.";
    reading.faults.report({ code: "contradiction", path, found: fold, expected: "a fold by name", message });
    return other;
  }
  const { front, flat } = frontOfPiece(piece, { ...keys, kind: keys.kind });
  if (flat.panels.every((panel) => panel > 0)) return { front, flats: [flat] };
  reportVanishing([flat], path, reading);
  return other;
}

function readWish(
  fold: WrittenFold | undefined,
  usual: "side" | "top",
  { isCover }: FoldSetting,
  path: string,
  reading: Reading,
): FoldWish {
  const shorten = SHORTER[reading.unit][isCover ? "cover" : "text"];
  if (fold === undefined) return usual;
  if (typeof fold === "string") return { kind: fold, ...(takes(fold, "shorten") ? { shorten } : {}) };
  const kind = fold.kind ?? usual;
  refuseMeasures(fold, kind, path, reading);
  if (kind === "own") return readOwn(fold, path, reading);
  const measures: FoldMeasures = {
    panels: readPanels(fold, kind, path, reading),
    shorten: readLength(fold.shorten, pathTo(path, "shorten"), reading, { allowZero: true }) ?? shorten,
    gap: readLength(fold.gap, pathTo(path, "gap"), reading, { allowZero: true }) ?? 0,
  };
  return { kind, along: fold.divides, ...measures };
}

/** The keys that a kind of fold takes besides. */
const MEASURES: Readonly<Record<NamedFold | "either" | "own", readonly (keyof WrittenFoldKeys)[]>> = {
  flat: [],
  side: [],
  top: [],
  either: [],
  easel: [],
  gate: ["gap", "divides"],
  "double-gate": ["divides"],
  z: ["divides"],
  tri: ["shorten", "divides"],
  roll: ["shorten", "panels", "divides"],
  "double-parallel": ["shorten", "divides"],
  accordion: ["panels", "divides"],
  shutter: ["divides"],
  own: ["widths", "folds", "divides"],
};

function takes(kind: NamedFold | "either" | "own", key: keyof WrittenFoldKeys): boolean {
  return MEASURES[kind].includes(key);
}

function refuseMeasures(
  fold: WrittenFoldKeys,
  kind: NamedFold | "either" | "own",
  path: string,
  { faults }: Reading,
): void {
  for (const key of ["gap", "shorten", "panels", "widths", "folds", "divides"] as const) {
    if (!(key in fold) || takes(kind, key)) continue;
    const known = MEASURES[kind];
    const others = (Object.keys(MEASURES) as (keyof typeof MEASURES)[]).filter((other) => takes(other, key));
    const help = known.length === 0 ? "It takes no other key" : `It takes ${listWords(known, "and")}`;
    const message = `A fold of the kind ${kind} takes no ${key}. ${help}; the key ${key} goes with ${listWords(others, "and")}.`;
    faults.report({
      code: "contradiction",
      path: pathTo(path, key),
      found: key,
      expected: `no ${key}`,
      message,
    });
  }
}

function readPanels(
  fold: WrittenFoldKeys,
  kind: string,
  path: string,
  { faults }: Reading,
): number | undefined {
  const { panels } = fold;
  if (panels === undefined || (kind !== "accordion" && kind !== "roll")) return undefined;
  const fewest = FEWEST_PANELS[kind];
  if (panels >= fewest) return panels;
  const expected = `at least ${fewest} panels`;
  const message = `A fold of the kind ${kind} has ${expected}, found ${panels}.`;
  faults.report({ code: "not-a-count", path: pathTo(path, "panels"), found: panels, expected, message });
  return undefined;
}

function readOwn(fold: WrittenFoldKeys, path: string, reading: Reading): FoldWish {
  const widthsPath = pathTo(path, "widths");
  const written = fold.widths ?? [];
  const widths = written.map((width, index) => readLength(width, pathTo(widthsPath, index), reading) ?? 1);
  const folds = (fold.folds ?? []).map((word): FoldDirection => word ?? "mountain");
  for (const key of ["widths", "folds"] as const) {
    if (key in fold) continue;
    const expected = key === "widths" ? "widths: [1 3/4, 3 3/4, 4 1/4]" : "folds: [mountain, valley]";
    const message = `The key "${key}" is missing: a fold of your own needs it. Write ${expected}.`;
    reading.faults.report({ code: "missing", path: pathTo(path, key), expected, message });
  }
  if (fold.widths !== undefined && fold.folds !== undefined && folds.length !== widths.length - 1) {
    const message = `There are ${widths.length} panels and ${folds.length === 1 ? "1 fold" : `${folds.length} folds`}. Say of each score between two panels how it folds.`;
    const expected = `${widths.length - 1} folds`;
    reading.faults.report({
      code: "contradiction",
      path: pathTo(path, "folds"),
      found: fold.folds,
      expected,
      message,
    });
  }
  const between = widths.slice(1).map((_, index): FoldDirection => folds[index] ?? "mountain");
  return { kind: "own", along: fold.divides ?? "width", widths, folds: between };
}

function reportVanishing(flats: readonly Flat[], path: string, { faults, unit }: Reading): void {
  const panels = flats.flatMap((flat) => flat.panels);
  const least = Math.min(...panels);
  const taken = least < 0 ? `${formatLength(-least, { unit })} more than it has` : "all that it has";
  const message =
    `A panel of this fold vanishes: the gap, or what it is shortened by, takes ${taken}. ` +
    "Make the card larger, or the gap or what panels are shortened by smaller.";
  faults.report({
    code: "part-vanishes",
    path,
    found: "a panel that vanishes",
    expected: "panels that are there",
    message,
  });
}
