import { inches, type Size } from "@sheetwright/measure";
import { formatFront } from "../fold/flats.js";
import { surfacesOf } from "../fold/surfaces.js";
import type { Choice, Design, Flat, GrainNeed, SurfaceLayers, SurfaceName } from "../project.js";
import { checkKind } from "./check-kind.js";
import type { Written } from "./check-structure.js";
import { type ChoiceReading, readChoice } from "./read-choice.js";
import { readEnvelope } from "./read-envelope.js";
import { readExtras } from "./read-extras.js";
import { readFold, readFoldOfPiece } from "./read-fold.js";
import { readFormat } from "./read-format.js";
import { readInsert } from "./read-insert.js";
import { readLayers } from "./read-layers.js";
import { readPlainSize } from "./read-measures.js";
import { LONGEST_NAME } from "./read-paper-design.js";
import { type Reading, readText } from "./reading.js";
import { listWords, writeNumber } from "./say-value.js";
import { CARD_KINDS } from "./schema/card-schema.js";
import type { ProjectFile } from "./schema/project-schema.js";
import { MOST_COPIES } from "./schema/scalars.js";
import { pathTo } from "./value-path.js";

type WrittenCard = Written<ProjectFile["cards"][number]>;

/** Stands in for a front whose size could not be read, in a card that is not looked into further. */
const SOME_FRONT: Size = { width: inches(5), height: inches(7) };

/** Reads the cards. One that could not be read is left out; in one with faults their values are made up. */
export function readCards(
  cards: Written<ProjectFile["cards"]> | undefined,
  copies: Design["copiesFor"],
  reading: ChoiceReading,
): readonly Design[] {
  return (cards ?? []).flatMap((card, index) =>
    card === undefined ? [] : [readCard(card, index, copies, reading)],
  );
}

function readCard(
  card: WrittenCard,
  index: number,
  copies: Design["copiesFor"],
  reading: ChoiceReading,
): Design {
  const path = pathTo("cards", index);
  const at = (key: keyof WrittenCard) => pathTo(path, key);
  checkKind(card, CARD_KINDS, "card", path, reading.faults);
  const named = readFormat(card.format, at("format"), reading);
  const size = readPlainSize(card.size, at("size"), reading);
  const piece = readPlainSize(card.flat, at("flat"), reading);
  const copiesFor = card.copies === undefined ? copies : readCopies(card.copies, at("copies"), reading);
  const { base, foldGrain } = readBase(card.base, at("base"), reading);
  const isCover = base.faces.some((face) => reading.covers.has(face));
  const usual = named === null ? null : formatFront(named, card.stand ?? "upright");
  const { front, flats } =
    piece === null
      ? readFold(
          card.fold,
          usual?.front ?? size ?? SOME_FRONT,
          { usual: usual?.fold ?? null, isCover },
          at("fold"),
          reading,
        )
      : readFoldOfPiece(card.fold, piece, { usual: null, isCover }, at("fold"), reading);
  return {
    number: index + 1,
    name: readText(card.name, at("name"), reading, LONGEST_NAME) ?? "",
    path,
    format: named?.id ?? null,
    front,
    flats,
    base,
    ...(card["front-paper"] === undefined
      ? {}
      : { frontPaper: readChoice(card["front-paper"], at("front-paper"), reading) ?? NO_CHOICE }),
    ...(card.insert === undefined ? {} : { insert: readInsert(card.insert, at("insert"), reading) }),
    foldGrain,
    copies: copiesFor.guests + copiesFor.samples,
    copiesFor,
    surfaces: readSurfaces(card, path, flats, front, reading),
    extras: readExtras(card.extras, at("extras"), { flats, front }, reading),
    envelope: readEnvelope(card.envelope, at("envelope"), reading),
  };
}

/** Reads what lies on each surface, and says where the fold gives no such surface. */
function readSurfaces(
  card: WrittenCard,
  path: string,
  flats: readonly Flat[],
  front: Size,
  reading: ChoiceReading,
): readonly SurfaceLayers[] {
  const known = flats.flatMap((flat) => surfacesOf(flat, front).map(({ name }) => name));
  const written = [
    ...(["front", "inside", "back"] as const).map((name) => ({
      name,
      path: pathTo(path, name),
      layers: card[name],
    })),
    ...Object.entries(card.elsewhere ?? {}).map(([name, layers]) => ({
      name: name as SurfaceName,
      path: pathTo(pathTo(path, "elsewhere"), name),
      layers,
    })),
  ];
  return written.flatMap(({ name, path: own, layers }) => {
    if (layers === undefined) return [];
    if (!known.includes(name)) reportNoSurface(name, own, flats, known, reading);
    return [{ name, path: own, layers: readLayers(layers, own, reading) }];
  });
}

function reportNoSurface(
  name: SurfaceName,
  path: string,
  flats: readonly Flat[],
  known: readonly SurfaceName[],
  { faults }: ChoiceReading,
): void {
  const fold = flats[0]?.fold ?? "side";
  const surfaces = listWords([...new Set(known)], "and");
  const message = `A card with the fold ${fold} has no ${name}. Its surfaces are ${surfaces}.`;
  faults.report({ code: "contradiction", path, found: name, expected: `one of ${surfaces}`, message });
}

const NO_CHOICE: Choice = { faces: [], text: "" };

function readBase(
  base: WrittenCard["base"],
  path: string,
  reading: ChoiceReading,
): { readonly base: Choice; readonly foldGrain: GrainNeed } {
  if (typeof base !== "object" || Array.isArray(base)) {
    const choice = readChoice(base as string | readonly (string | undefined)[] | undefined, path, reading);
    return { base: choice ?? NO_CHOICE, foldGrain: "prefer" };
  }
  const { paper, grain } = base as Exclude<typeof base, readonly unknown[]>;
  return {
    base: readChoice(paper, pathTo(path, "paper"), reading) ?? NO_CHOICE,
    foldGrain: grain ?? "prefer",
  };
}

/** Reads copies: a number of guests, or guests and samples, of which there must be one at least, and spares. */
export function readCopies(
  copies: Written<ProjectFile["copies"]>,
  path: string,
  { faults }: Reading,
): Design["copiesFor"] {
  if (copies === undefined) return { guests: 1, samples: 0 };
  if (typeof copies === "number") return { guests: copies, samples: 0 };
  // What other cards go by when these copies are wrong.
  const one = { guests: 1, samples: 0 };
  if (!faults.isSound(path)) return one;
  const { guests = 0, samples = 0, spares = 0 } = copies;
  const sum = guests + samples;
  if (sum + spares > MOST_COPIES) {
    const most = writeNumber(MOST_COPIES);
    const who = spares === 0 ? "Guests and samples" : "Guests, samples and spares";
    const message = `${who} are ${writeNumber(sum + spares)} copies together, and ${most} are the most.`;
    faults.report({
      code: "too-many",
      path,
      found: sum + spares,
      expected: `at most ${most} copies`,
      message,
    });
    return one;
  }
  if (sum === 0) {
    const only = spares === 0 ? "" : " Spares are made only beside those.";
    const message = `Guests and samples are no copies together. Give at least one; a card that is not made is left out of the list.${only}`;
    faults.report({ code: "not-a-count", path, found: 0, expected: "at least 1 copy", message });
    return one;
  }
  return { guests, samples, ...(spares === 0 ? {} : { spares }) };
}
