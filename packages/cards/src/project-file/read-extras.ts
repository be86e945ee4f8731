import { GRAMS_PER_OUNCE, inches, type Size } from "@sheetwright/measure";
import { surfacesOf } from "../fold/surfaces.js";
import type { Extra, Flat, SurfaceName } from "../project.js";
import type { Written } from "./check-structure.js";
import { readDecimal } from "./read-decimal.js";
import { readLength } from "./read-measures.js";
import { LONGEST_NAME } from "./read-paper-design.js";
import { type Reading, readText } from "./reading.js";
import { listWords, quote } from "./say-value.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { pathTo } from "./value-path.js";

type WrittenExtras = Written<NonNullable<ProjectFile["cards"][number]["extras"]>>;

/** Nothing thicker goes on a card: foam, knots, buttons. */
export const THICKEST_EXTRA = inches(2);
/** Nothing on a card weighs more, in grams. */
const HEAVIEST = 1000;

const MASS = /^(\d{0,4}(?:\.\d{1,4})?) ?(g|grams?|oz|ounces?)\.?$/i;

/** Reads what is on a card beside its paper, and reports what is wrong with it. */
export function readExtras(
  extras: WrittenExtras | undefined,
  path: string,
  card: { readonly flats: readonly Flat[]; readonly front: Size },
  reading: Reading,
): readonly Extra[] {
  const known = card.flats.flatMap((flat) => surfacesOf(flat, card.front).map(({ name }) => name));
  return (extras ?? []).flatMap((extra, index): readonly Extra[] => {
    if (extra === undefined) return [];
    const own = pathTo(path, index);
    const at = (key: keyof typeof extra) => pathTo(own, key);
    const surface = (extra.surface ?? "front") as SurfaceName;
    if (!known.includes(surface)) {
      const surfaces = listWords([...new Set(known)], "and");
      const message = `The fold of this card gives no ${surface}. Its surfaces are ${surfaces}.`;
      const expected = `one of ${surfaces}`;
      reading.faults.report({
        code: "contradiction",
        path: at("surface"),
        found: surface,
        expected,
        message,
      });
    }
    return [
      {
        path: own,
        name: readText(extra.name, at("name"), reading, LONGEST_NAME) ?? "",
        count: extra.count ?? 1,
        surface,
        thickness: readLength(extra.thickness, at("thickness"), reading, { longest: THICKEST_EXTRA }) ?? 1,
        grams: readMass(extra.mass, at("mass"), reading),
        isSmallPart: extra["small-part"] ?? false,
        ...costOf(extra.cost, at("cost"), reading),
      },
    ];
  });
}

function costOf(cost: string | number | undefined, path: string, reading: Reading): Pick<Extra, "cost"> {
  const read = readDecimal(cost, path, "extraCost", reading);
  return read === null ? {} : { cost: read };
}

/** Reads what something weighs, `1.2 g` or `0.05 oz`, in grams. */
function readMass(text: string | undefined, path: string, { faults }: Reading): number | null {
  if (text === undefined) return null;
  const [, digits = "", unit = ""] = MASS.exec(text.trim()) ?? [];
  const number = Number(digits === "" ? Number.NaN : digits);
  const grams = /^g/i.test(unit) ? number : number * GRAMS_PER_OUNCE;
  if (grams > 0 && grams <= HEAVIEST) return grams;
  const expected = "a weight with its unit, such as 1.2 g or 0.05 oz";
  const heavy = grams > HEAVIEST ? "More than 1,000 g is no weight of a part of a card. " : "";
  const message = `${quote(text)} is not what a part of a card weighs. ${heavy}Write it with its unit, such as 1.2 g or 0.05 oz; weigh ten together and divide, where one is too light for the scale.`;
  faults.report({ code: "wrong-type", path, found: text, expected, message });
  return null;
}
