import type { Piece } from "../expansion.js";
import type { Project } from "../project.js";
import type { ProjectFault } from "../project-fault.js";
import { choicesOf } from "./card-choices.js";
import { checkCount } from "./check-values.js";
import { fault } from "./fault.js";

/** Most bags: as many as copies of a card. */
const MOST_BAGS = 100_000;

/**
 * Finds what does not go with kits: cards that not every bag makes alike, spare copies, pieces that could come both from
 * whole sheets in a bag and from what is cut for all, and papers that go into other bags than the project has.
 *
 * @internal
 */
export function checkKits(project: Project): readonly ProjectFault[] {
  const { kits, papers, cards } = project;
  const bags = kits?.bags;
  const wrong = papers
    .filter((paper) => paper.bags !== undefined && paper.bags !== bags)
    .map(({ id, bags: found }) => {
      const expected = bags === undefined ? "no bags in a class" : `the ${bags} bags of the project`;
      const message = `The sheets of ${id} go into ${found} bags: expected ${expected}.`;
      return fault({ code: "contradiction", path: `papers.${id}`, found: String(found), expected, message });
    });
  if (bags === undefined) return wrong;
  const count = checkCount("copies", bags, 1, MOST_BAGS);
  if (count.length > 0) return [...wrong, ...count];
  return [
    ...wrong,
    ...cards.flatMap(({ copies, copiesFor, path }) => [
      ...unequal(copies, bags, `${path}.copies`),
      ...spare(copiesFor.spares, `${path}.copies`),
    ]),
    ...mixed(project),
  ];
}

function unequal(copies: number, bags: number, path: string): readonly ProjectFault[] {
  if (copies % bags === 0) return [];
  const expected = `${bags} copies, or a multiple of that`;
  const message =
    `There are ${bags} bags, one for each guest and sample, and all hold the same: ${copies} copies do not divide among them. ` +
    `Expected ${expected}; copies beside the title says how many bags there are.`;
  return [fault({ code: "contradiction", path, found: String(copies), expected, message })];
}

function spare(spares: number | undefined, path: string): readonly ProjectFault[] {
  if (spares === undefined) return [];
  const expected = "guests and samples only";
  const message =
    "A spare copy would take a bag of its own, since all bags hold the same. Make a bag more of it instead: " +
    "one guest or one sample more.";
  return [fault({ code: "contradiction", path, found: String(spares), expected, message })];
}

/** A piece is cut either by the guest or before: which one it is must not hang on the search. */
function mixed({ papers, cards }: Project): readonly ProjectFault[] {
  const whole = facesOf(papers.filter(({ bags }) => bags !== undefined));
  return cards.flatMap(choicesOf).flatMap(({ choice, path }) => {
    const first = choice.faces.find((id) => whole.has(id));
    const other = choice.faces.find((id) => !whole.has(id));
    if (first === undefined || other === undefined) return [];
    const expected = "papers that all go out whole, or all are cut before";
    const message =
      `${first} goes into the bags whole and ${other} is cut for all before, so nobody could tell who cuts this piece. ` +
      "Name papers of one of the two, or change hand-out of one.";
    return [fault({ code: "contradiction", path, found: `${first} and ${other}`, expected, message })];
  });
}

function facesOf(papers: Project["papers"]): ReadonlySet<string> {
  return new Set(
    papers.flatMap(({ designs }) =>
      designs.flatMap(({ front, back }) => (back === null ? [front.id] : [front.id, back.id])),
    ),
  );
}

/**
 * Finds pieces from whole sheets in bags that are cut already: it is the guests who cut them, so no plan can go on from
 * there.
 *
 * @internal
 */
export function checkCutInBags({ papers }: Project, pieces: readonly Piece[]): readonly ProjectFault[] {
  const whole = facesOf(papers.filter(({ bags }) => bags !== undefined));
  return pieces
    .filter(({ cutAlready, faces }) => cutAlready !== undefined && faces.some((id) => whole.has(id)))
    .map(({ path, label, cutAlready }) => {
      const expected = "pieces of papers that are cut before";
      const message = `${cutAlready} of ${label} are cut already, but its paper goes out whole and the guests cut it. Expected only ${expected}.`;
      return fault({ code: "contradiction", path, found: String(cutAlready), expected, message });
    });
}
