/** A made-up project of a large class: many designs from many papers, for all guests or for half of them. */

/** Papers by name: letter cardstock with its grain along, and squares of 12 in whose grain nobody knows. */
const LETTER = ["night", "cream", "ember", "copper", "pearl", "smoke", "frost", "coal"];
const SQUARE = ["moss", "dusk", "plum", "sand"];
/** In the order that designs take them. */
const PAPERS = [
  ...LETTER.slice(0, 4),
  ...SQUARE.slice(0, 2),
  ...LETTER.slice(4, 6),
  ...SQUARE.slice(2),
  ...LETTER.slice(6),
];

const DESIGNS = 20;
/** The first so many designs are made by all guests, the others by half of them. */
const FOR_ALL = 12;
const FORMATS = ["us-a2", "us-a7", "us-a6", "us-a2"];

/**
 * The project file of a class: twelve papers and twenty designs of five pieces each, a hundred kinds of pieces in all,
 * eighty pieces a guest.
 *
 * @param guests an even whole number from 2.
 */
export function classProject(guests: number): string {
  const papers = PAPERS.map((name) =>
    LETTER.includes(name)
      ? `  ${name}: { cardstock: us-letter, grain: long }`
      : `  ${name}: { cardstock: 12 x 12 }`,
  );
  const cards = Array.from({ length: DESIGNS }, (_, i) => design(i, i < FOR_ALL ? guests : guests / 2));
  return ["sheetwright: 1", `title: A class of ${guests}`, "papers:", ...papers, "cards:", ...cards, ""].join(
    "\n",
  );
}

function design(i: number, copies: number): string {
  const shift = i < FOR_ALL ? 0 : 3;
  const [base, mat, panel, strip, corner] = [0, 7, 14, 21, 28].map(
    (step) => PAPERS[(i * 5 + step + shift) % PAPERS.length],
  );
  const border = i % 3 === 0 ? "1/4" : "1/8";
  const width = `${1 + (i % 5)}/${i % 2 === 0 ? 4 : 2}`;
  const size = `${1 + ((i % 8) % 3)} ${1 + 2 * (i % 4)}/8 x ${1 + (i % 2)} ${1 + 2 * (i % 3)}/8`;
  return [
    `  - name: Card ${i + 1}`,
    `    format: ${FORMATS[i % FORMATS.length]}`,
    `    base: ${base}`,
    `    copies: ${copies}`,
    "    front:",
    `      - { mat: ${mat}, border: 1/8 }`,
    `      - { panel: ${panel}, border: ${border} }`,
    `      - { strip: ${strip}, width: ${width}, bottom: 3/8 }`,
    `      - { panel: ${corner}, size: ${size}, top: 1/2 }`,
  ].join("\n");
}
