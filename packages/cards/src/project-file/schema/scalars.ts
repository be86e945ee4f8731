// The single values of a project file. A length or a size is looked into later, since how it is read depends on `units`.

import { cardSizes, sheetSizes } from "@sheetwright/measure";
import { z } from "zod";
import { says, type WordingName } from "../wording.js";

/** The most copies of a card, and the most sheets of a paper. */
export const MOST_COPIES = 100_000;

/** A text for people; a bare number or word is taken as it is written. */
export const textOf = (wording: WordingName) => z.union([z.string(), z.number(), z.boolean()], says(wording));
/** Any text for people. */
export const text = textOf("text");
/** A length as written. */
export const length = z.union([z.number(), z.string()], says("length"));
/** Width x height as written. */
export const size = z.string(says("size"));
/** A name of a sheet or any text: the names are there for editors that offer them. */
export const sheetSize = z.union([z.enum(sheetSizes.map(({ id }) => id)), z.string()], says("namedSize"));
/** The name of a card size, in any way it may be written; the ids are there for editors too. */
export const cardFormat = z.union([z.enum(cardSizes.map(({ id }) => id)), z.string()], says("format"));
/** How many there are. */
export const count = z.int(says("count")).min(0, says("count")).max(MOST_COPIES, says("count"));
/** The way a pattern can be looked at. */
export const pattern = z.enum(["none", "two-way", "one-way"], says("pattern"));
/** The direction of a strip or of bands. */
export const run = z.enum(["across", "upright"], says("runs"));
/** One paper, or several of which any will do. */
export const choice = z.union(
  [z.string(), z.array(z.string(says("choice")), says("choice")).min(1, says("choice"))],
  says("choice"),
);
