import { readdirSync, readFileSync } from "node:fs";
import type { OutlineNoteCode, OutlineReadOptions } from "../../src/svg/index.js";

const FOLDER = new URL("../../../../test-fixtures/outlines/", import.meta.url);

/** What a good file holds. Lengths in millimetres, areas in square millimetres. */
export interface GoodFile {
  readonly name: string;
  readonly svg: string;
  /** How the area comes about. */
  readonly by: string;
  readonly area: number;
  readonly parts: number;
  readonly windows: number;
  readonly box?: readonly [x: number, y: number, width: number, height: number];
  readonly notes: readonly OutlineNoteCode[];
  /** Width and height as rendered; absent where a renderer shows something else on purpose. */
  readonly page?: readonly [width: number, height: number];
  readonly options?: OutlineReadOptions;
}

/** What is wrong with a bad file. */
export interface BadFile {
  readonly name: string;
  readonly svg: string;
  readonly faults: readonly {
    readonly code: string;
    readonly line: number | null;
    readonly element: string;
  }[];
  /** Words that have to be in the message. */
  readonly says?: string;
}

const files = readdirSync(FOLDER)
  .filter((file) => file.endsWith(".svg"))
  .sort()
  .map((file) => {
    const name = file.slice(0, -".svg".length);
    const expected: unknown = JSON.parse(readFileSync(new URL(`${name}.expected.json`, FOLDER), "utf8"));
    return { name, svg: readFileSync(new URL(file, FOLDER), "utf8"), ...(expected as object) };
  });

export const goodFiles = files.filter((file): file is GoodFile => "area" in file);
export const badFiles = files.filter((file): file is BadFile => "faults" in file);
export const fileCount = files.length;
