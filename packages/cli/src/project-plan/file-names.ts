import type { Plan } from "@sheetwright/planner";

/** The beginnings of the names of a plan's files: ASCII, lower case, the same for the same project. */
export interface FileNames {
  /** By group and layout: `sheet-night-1`. */
  readonly layouts: readonly (readonly string[])[];
  /** By the cards' order: `card-1-rooftops`. */
  readonly cards: readonly string[];
}

/** What a name in a file's name may be at most; some systems take no long paths. */
const LONGEST_NAME = 40;

/**
 * Names the files of a plan: a layout's after the paper it is cut from and its number among that paper's layouts, a card's
 * after its number and name.
 */
export function fileNames({ groups, papers, cards }: Pick<Plan, "groups" | "papers" | "cards">): FileNames {
  const papersByDesign = uniqueNames(papers.flatMap(({ designs }) => designs.map(({ id }) => id)));
  const numbers = new Map<string, number>();
  const layouts = groups.map(({ packing, sheets }) =>
    packing.layouts.map((layout) => {
      const design = sheets.find(({ sheet }) => sheet === layout.sheet)?.design ?? "";
      const name = papersByDesign.get(design);
      if (name === undefined)
        throw new RangeError(`The plan names the sheet "${layout.sheet}", which is of no paper.`);
      const number = (numbers.get(name) ?? 0) + 1;
      numbers.set(name, number);
      return `sheet-${name}-${number}`;
    }),
  );
  return {
    layouts,
    cards: cards.map(({ number, name }) =>
      ["card", number, plainName(name)].filter((part) => part !== "").join("-"),
    ),
  };
}

/** Every design's id as a part of a file's name; ids that differ in signs or capitals only are told apart by a number. */
function uniqueNames(ids: readonly string[]): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  const taken = new Set<string>();
  for (const id of ids) {
    const letters = plainName(id);
    const plain = /^[a-z]/.test(letters) ? letters : `paper-${letters}`.replace(/-$/, "");
    let name = plain;
    for (let again = 2; taken.has(name); again++) name = `${plain}-${again}`;
    taken.add(name);
    names.set(id, name);
  }
  return names;
}

/** Latin letters that are no letter with an accent, and how they are usually written without. */
const SPELT: Readonly<Record<string, string>> = {
  ß: "ss",
  æ: "ae",
  œ: "oe",
  ø: "o",
  đ: "d",
  ð: "d",
  ł: "l",
  þ: "th",
  ı: "i",
};

/** Letters a to z and digits, with a hyphen for all else between them; letters with accents lose these. */
function plainName(text: string): string {
  const plain = text
    .normalize("NFD")
    .replace(/\p{Mn}/gu, "")
    .toLowerCase()
    .replace(/[ßæœøđðłþı]/gu, (letter) => SPELT[letter] ?? "")
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, LONGEST_NAME);
  return plain.replace(/^-+|-+$/g, "");
}
