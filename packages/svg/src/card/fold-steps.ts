/**
 * How a base is scored, slit and folded, in words. The ridge that a score raises goes inside the fold (common practice;
 * paper-merchant pages and bookbinding handbooks), so a mountain is scored on the outside of the card and a valley on its
 * inside.
 */

import { formatLength, type Ticks, type Unit } from "@sheetwright/measure";
import type { Flat } from "@sheetwright/planner";
import { unbroken } from "../text/break-lines.js";
import { listed } from "../wording/score-in-words.js";
import { bothUnits } from "./place-in-words.js";

/** Where the scores lie, in short: `4 1/4 in and 6 3/8 in (inside) from the left`. */
export function scoresAt({ scores, along }: Flat, unit: Unit): string {
  const places = scores.map(({ at, folds }) => {
    const length = unbroken(formatLength(at, { unit }));
    return folds === "valley" ? `${length} (inside)` : length;
  });
  return `${listed(places)} from the ${along === "width" ? "left" : "top"}`;
}

/** Where the slits lie: `1 1/2 in and 4 in from the top, from 1 3/4 in to 8 3/4 in from the left`. */
export function slitsAt({ slits, along }: Flat, say: (length: Ticks) => string): string {
  const [first] = slits;
  if (first === undefined) return "";
  const [beside, start] = along === "width" ? ["top", "left"] : ["left", "top"];
  const places = listed(slits.map(({ at }) => say(at)));
  return `${places} from the ${beside}, from ${say(first.from)} to ${say(first.to)} from the ${start}`;
}

/** The steps that turn a flat into a card; none for one that is not folded. */
export function foldStep(flat: Flat, label: string, unit: Unit): readonly string[] {
  const { along, scores } = flat;
  const [edge, run] = along === "width" ? ["left", "from top to bottom"] : ["top", "from side to side"];
  const [only] = scores;
  if (only === undefined) return [];
  const at = (chosen: Flat["scores"]) => listed(chosen.map((score) => bothUnits(score.at, unit)));
  const outside = scores.filter(({ folds }) => folds !== "valley");
  const inside = scores.filter(({ folds }) => folds === "valley");
  if (scores.length === 1 && outside.length === 1) {
    const middle = 2 * only.at === flat[along];
    return [
      `Score ${label} ${at(scores)} from its ${edge} edge, ${run}, and fold along the score with the ridge that it ` +
        `raises inside. The front is the ${along === "width" ? "right" : "lower"} ${middle ? "half" : "part"}.`,
    ];
  }
  // Turned over so, the flat keeps the side that is measured from.
  const over = along === "width" ? "from top to bottom" : "from left to right";
  const scored = [
    ...(outside.length === 0
      ? []
      : [`With its outside up, score ${label} ${at(outside)} from its ${edge} edge, ${run}.`]),
    ...(inside.length === 0
      ? []
      : [`Turn it over ${over} and score its inside ${at(inside)} from the ${edge} edge.`]),
  ];
  const slit =
    flat.slits.length === 0
      ? []
      : [
          `Cut slits ${slitsAt(flat, (length) => bothUnits(length, unit))}, with a craft knife along a metal ruler on a ` +
            "cutting mat; start and stop at the scores.",
        ];
  const way = howToFold(flat);
  return [
    `${scored.join(" ")} The ridge that a score raises goes inside its fold.`,
    ...slit,
    ...(way === "" ? [] : [way]),
  ];
}

/** In what order the panels fold; common practice, no source. */
function howToFold({ fold, along }: Flat): string {
  const [first, last] = along === "width" ? ["left", "right"] : ["upper", "lower"];
  switch (fold) {
    case "gate":
      return "Fold both doors over the inside.";
    case "double-gate":
      return `Fold in the ${last} panel first, then both doors over the inside.`;
    case "z":
      return `Fold the back behind, then fold the ${last} panel, the flap, back to the front.`;
    case "easel":
      return (
        "Fold the back behind, then fold the lowest panel, the flap, up in front. To stand, the front leans against " +
        "something raised on the inside, such as a strip on foam."
      );
    case "tri":
      return `Fold in the ${first} panel, the flap, then close the front over it.`;
    case "roll":
      return `Roll it up from the ${first} panel on; the front comes last.`;
    case "double-parallel":
      return "Fold it in half, then in half again.";
    case "accordion":
      return "Fold it to and fro.";
    case "shutter":
      return "Fold it to and fro in the middle, between the slits; the strips beside them fold the other way.";
    default:
      return "";
  }
}
