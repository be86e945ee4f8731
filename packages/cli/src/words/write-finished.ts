import { type Basis, type CardEnvelope, sayMass, sayThickness } from "@sheetwright/cards";
import { formatSize, type Unit } from "@sheetwright/measure";
import type { FinishedInShort } from "../finished/finished-in-short.js";
import { listed } from "./listed.js";
import { table } from "./table.js";
import { wrapped } from "./wrapped.js";

/**
 * Says of each card, a line each, how thick it is, what it weighs in its envelope, and how it goes in that. No weight is more
 * than estimated, and where a thickness is assumed so is the weight of that paper; both are said once below.
 */
export function writeFinished(cards: readonly FinishedInShort[], unit: Unit): readonly string[] {
  const rows = cards.map(({ number, name, thickness, mass, envelope }) => [
    `${number} ${name}`,
    `${sayThickness(thickness.value, unit)} thick${marked(thickness.basis)}`,
    `${sayMass(mass.withEnvelope.grams, unit)}${mass.basis === "assumed" && thickness.basis !== "assumed" ? marked(mass.basis) : ""}`,
    sayEnvelope(envelope, envelope.leastFrom === thickness.value, unit),
  ]);
  return table(rows);
}

/** How well the weights are founded, what is reckoned for envelopes, and what is left out; with `taken` columns on its left. */
export function writeLeftOut(cards: readonly FinishedInShort[], taken = 0): readonly string[] {
  if (cards.length === 0) return [];
  const unweighed = cards.flatMap(({ name, mass }) => mass.without.map((extra) => `the ${extra} of ${name}`));
  const left = listed(["glue", "foam", ...unweighed]);
  // An envelope's own weight is estimated at best; pounds without a grade are told of by themselves.
  const isTaken = cards.some(({ envelope }) => envelope.mass.basis === "assumed");
  const paper = isTaken ? " (24 lb bond where not given)" : "";
  const assumed = cards.some(({ thickness }) => thickness.basis === "assumed");
  const how = assumed ? "estimated, or assumed where the thickness is," : "estimated,";
  return wrapped(`Weights are ${how} with the envelope${paper} and without ${left}.`, "", taken);
}

function marked(basis: Basis): string {
  return basis === "given" ? "" : ` (${basis})`;
}

function sayEnvelope(
  { verdict, isLoose, name, width, height, clearance }: CardEnvelope,
  byThickness: boolean,
  unit: Unit,
): string {
  const size = formatSize(width, height, { unit });
  // Its other name, as in US A7 envelope (Lee), stands in what is told of it.
  const what = name === null ? `an envelope of ${size}` : name.replace(/ \([^)]*\)$/, "");
  if (verdict !== "too-small") return `${isLoose ? "loose" : verdict} in ${what}`;
  const isThick = byThickness && Math.min(clearance.short, clearance.long) >= 0;
  return `too ${isThick ? "thick" : "large"} for ${what}`;
}
