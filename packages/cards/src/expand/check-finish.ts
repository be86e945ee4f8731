import { envelopeSizes } from "@sheetwright/measure";
import { surfacesOf } from "../fold/surfaces.js";
import type { Design, EnvelopeWish, Extra } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { checkCount, checkLength, checkSize } from "./check-values.js";
import { fault } from "./fault.js";

/** Most pieces of one extra on a card. */
const MOST_EXTRAS = 100_000;

/**
 * Finds numbers out of their range in the extras and the envelope of a card, and extras on a surface that it has not.
 *
 * @internal
 */
export function checkFinish(design: Design): readonly ProjectFault[] {
  const { path, extras, envelope } = design;
  return [
    ...extras.flatMap((extra) => checkExtra(extra, design)),
    ...(envelope === null ? [] : checkEnvelope(envelope, `${path}.envelope`)),
  ];
}

function checkExtra(
  { path, count, thickness, grams, surface }: Extra,
  { flats, front }: Design,
): readonly ProjectFault[] {
  const faults = [
    ...checkCount(`${path}.count`, count, 1, MOST_EXTRAS),
    ...checkLength(`${path}.thickness`, thickness, 1),
    ...(grams === null ? [] : checkWeight(`${path}.mass`, grams, "grams")),
  ];
  const missing = flats.some((flat) => surfacesOf(flat, front).every(({ name }) => name !== surface));
  if (!missing) return faults;
  const message = `The fold of this card gives no ${surface}. Lay it on a surface that it has.`;
  const expected = "a surface of the card";
  return [
    ...faults,
    fault({ code: "contradiction", path: `${path}.surface`, found: surface, expected, message }),
  ];
}

function checkEnvelope({ id, size, weight }: EnvelopeWish, path: string): readonly ProjectFault[] {
  return [
    ...(id === null ? [] : checkName(id, size, `${path}.name`)),
    ...(size === null ? [] : checkSize(`${path}.size`, size)),
    ...(weight === null
      ? []
      : weight.unit === "lb"
        ? checkWeight(`${path}.weight`, weight.pounds, "pounds")
        : checkWeight(`${path}.weight`, weight.grammage, "g/m2")),
  ];
}

/** A named envelope is there, and as large as its name says. */
function checkName(id: string, size: EnvelopeWish["size"], path: string): readonly ProjectFault[] {
  const named = envelopeSizes.find((envelope) => envelope.id === id);
  if (named?.width === size?.width && named?.height === size?.height && named !== undefined) return [];
  const expected = named === undefined ? "the id of an envelope" : `the size of ${id}`;
  const message =
    named === undefined
      ? `There is no envelope "${id}". Name one of measure, such as env-us-a7.`
      : `The envelope ${id} does not have the size that is given with it. Leave its name out, or give its own size.`;
  return [fault({ code: "contradiction", path, found: id, expected, message })];
}

/**
 * Finds a weight that is no number above 0.
 *
 * @internal
 */
export function checkWeight(path: string, value: number, unit: string): readonly ProjectFault[] {
  if (Number.isFinite(value) && value > 0) return [];
  const expected = `a number of ${unit} above 0`;
  const message = `Expected ${expected}, found ${value}.`;
  return [fault({ code: "not-a-count", path, found: String(value), expected, message })];
}
