import type { Size } from "@sheetwright/measure";

/** A chart of horizontal bars: panels of groups, one bar a series in each group. Plain data. */
export interface BarChart {
  readonly title: string;
  /** What a bar's length says. */
  readonly measure: string;
  readonly series: readonly Series[];
  /** Decimals of the numbers behind the bars. */
  readonly decimals: 1 | 2;
  /** Whether all panels have one scale, or each row of panels, or each panel, its own. */
  readonly scale: "one" | "by row" | "by panel";
  /** What the upright mark across a group says; `null` for a chart without marks. */
  readonly mark: string | null;
  readonly panels: readonly Panel[];
  /** Lines below the chart. */
  readonly notes: readonly string[];
}

/** Bars of one colour. */
interface Series {
  readonly name: string;
  readonly fill: string;
}

/** Bars that belong together, such as those of one sheet. */
export interface Panel {
  readonly title: string;
  /** A rectangle whose shape stands beside the title, in ticks; `null` for none. */
  readonly outline: Size | null;
  /** Unit of the values, such as `s` (default: `%`); a longer one than a letter stands in the title. */
  readonly unit?: string | undefined;
  /** Decimals of the numbers, where they are not those of the chart. */
  readonly decimals?: 0 | 1 | 2 | undefined;
  /** The numbers of the series that have a bar here, from 0 (default: all). */
  readonly shown?: readonly number[] | undefined;
  readonly groups: readonly Group[];
}

/** Bars that stand together. */
export interface Group {
  readonly label: string;
  /** A second, quieter line of the label. */
  readonly note: string;
  /** One value a series, from 0; `null` where there is none. */
  readonly values: readonly (number | null)[];
  /** Where the mark stands; `null` for none. */
  readonly mark: number | null;
}
