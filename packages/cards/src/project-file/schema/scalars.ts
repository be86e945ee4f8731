// The single values of a project file. A length or a size is looked into later, since how it is read depends on `units`.

import { cardSizes, sheetSizes } from "@sheetwright/measure";
import { z } from "zod";
import { says } from "../wording.js";

/** The most copies of a card, and the most sheets of a paper. */
export const MOST_COPIES = 100_000;

export const text = z.union([z.string(), z.number(), z.boolean()], says("text"));
export const length = z.union([z.number(), z.string()], says("length"));
export const size = z.string(says("size"));
/** A name of a sheet or any text: the names are there for editors that offer them. */
export const sheetSize = z.union([z.enum(sheetSizes.map(({ id }) => id)), z.string()], says("namedSize"));
export const cardFormat = z.union([z.enum(cardSizes.map(({ id }) => id)), z.string()], says("format"));
export const count = z.int(says("count")).min(0, says("count")).max(MOST_COPIES, says("count"));
export const pattern = z.enum(["none", "two-way", "one-way"], says("pattern"));
export const run = z.enum(["across", "upright"], says("runs"));
export const choice = z.union(
  [z.string(), z.array(z.string(says("choice")), says("choice")).min(1, says("choice"))],
  says("choice"),
);
