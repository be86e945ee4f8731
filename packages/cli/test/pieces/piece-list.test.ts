import { inches, millimetres } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import { writeFault } from "../../src/fault.js";
import { readPieceList } from "../../src/pieces/piece-list.js";

const HEADER = "name,width,height,quantity,turn\n";
const read = (text: string, unit: "in" | "mm" = "in") => readPieceList(text, "pieces.csv", unit);
const faults = (text: string): readonly string[] => read(text).faults.map(writeFault);

describe("a piece list", () => {
  it("gives a piece a line, width first", () => {
    const { pieces, faults } = read(`${HEADER}base,5 1/2,8.5,12,no\nmat,4",5-1/4 in,24,yes\n`);
    expect(faults).toEqual([]);
    expect(pieces).toEqual([
      { name: "base", width: inches(5.5), height: inches(8.5), quantity: 12, turn: false },
      { name: "mat", width: inches(4), height: inches(5.25), quantity: 24, turn: true },
    ]);
  });

  it("reads bare numbers in the unit that was asked for, and others in their own", () => {
    const [piece] = read(`${HEADER}mat,100,5 in,1,yes`, "mm").pieces;
    expect(piece).toMatchObject({ width: millimetres(100), height: inches(5) });
  });

  it("takes columns in any order, with capitals and spaces round them", () => {
    const [piece] = read(" Turn ,HEIGHT, Quantity,Name,width\nNo,5,3,mat,4\n").pieces;
    expect(piece).toEqual({ name: "mat", width: inches(4), height: inches(5), quantity: 3, turn: false });
  });

  it.each([
    ["Windows", "\r\n"],
    ["old Macintosh", "\r"],
    ["Unix", "\n"],
  ])("takes %s line endings, and no ending after the last line", (_, end) => {
    const { pieces } = read(["name,width,height,quantity,turn", "a,1,2,3,yes", "b,2,3,4,no"].join(end));
    expect(pieces.map(({ name }) => name)).toEqual(["a", "b"]);
  });

  it("takes quoted cells, with commas and doubled quote marks in them", () => {
    const { pieces } = read(`${HEADER}"mat, large","8.5""","3""",1,"yes"\n`);
    expect(pieces[0]).toMatchObject({ name: "mat, large", width: inches(8.5), height: inches(3) });
  });

  it.each([";", "\t"])("takes %j between the cells where a spreadsheet wrote it", (mark) => {
    const text = `${HEADER}mat,4.5,5,1,yes\n`.replaceAll(",", mark);
    expect(read(text).pieces[0]).toMatchObject({ name: "mat", width: inches(4.5) });
  });

  it("leaves out empty lines, lines of empty cells and comments, and counts the comments", () => {
    const { pieces, comments, faults } = read(
      `# note\n\n${HEADER}\n ,,,,\n#mat,1,1,1,yes\nmat,4,5,1,yes,,\n,,,,,,\n`,
    );
    expect(faults).toEqual([]);
    expect(pieces).toHaveLength(1);
    expect(comments).toBe(2);
  });

  it("takes a name that starts with # in quotes", () => {
    expect(read(`${HEADER}"#1 mat",4,5,1,yes`).pieces[0]?.name).toBe("#1 mat");
  });

  it("keeps a piece with quantity 0, which is a line left for later", () => {
    expect(read(`${HEADER}a,1,1,0,yes\nb,1,1,1,yes`).pieces.map(({ quantity }) => quantity)).toEqual([0, 1]);
  });

  it("draws white space inside a name together", () => {
    expect(read(`${HEADER}  large \t mat ,4,5,1,yes`).pieces[0]?.name).toBe("large mat");
  });

  it("says where a length is wrong, counting lines as an editor does", () => {
    expect(faults(`${HEADER}\n# note\nmat,4,"8,5",1,yes`)).toEqual([
      'pieces.csv:4, column 3 (height): "8,5" is not a length: found ",", expected a dot as the decimal mark. Write 8.5 with a dot.',
    ]);
  });

  it("goes on after an open quote, which spoils its own line only", () => {
    const found = faults(`${HEADER}"mat,4,5,1,yes\npanel,3,x,1,yes\n`);
    expect(found).toHaveLength(2);
    expect(found[0]).toMatch(/^pieces\.csv:2: a quote mark opens/);
    expect(found[1]).toMatch(/^pieces\.csv:3, column 3 \(height\)/);
  });

  it("collects all faults of a line", () => {
    expect(faults(`${HEADER},x,y,z,w`).map((fault) => /column (\d)/.exec(fault)?.[1])).toEqual([
      "1",
      "2",
      "3",
      "4",
      "5",
    ]);
  });

  it("takes a name once, whatever its capitals", () => {
    expect(faults(`${HEADER}Mat,4,5,1,yes\nmat,4,5,1,yes`)[0]).toMatch(
      /^pieces\.csv:3, column 1 \(name\): "mat" is the name/,
    );
  });

  it("refuses a name that cannot be printed or is too long", () => {
    expect(faults(`${HEADER}a\u0007b,4,5,1,yes`)[0]).toContain(
      '"a\\u0007b" holds a character that cannot be printed',
    );
    expect(faults(`${HEADER}${"m".repeat(81)},4,5,1,yes`)[0]).toContain("found a name of 81 characters");
    expect(faults(`${HEADER}${"🌙".repeat(80)},4,5,1,yes`)).toEqual([]);
  });

  it("names every missing and every unknown column", () => {
    expect(faults("name,width,colour\n")).toEqual([
      "pieces.csv:1: the columns height, quantity and turn are missing. The header is name,width,height,quantity,turn; turn says yes where a piece may be turned, else no.",
      'pieces.csv:1, column 3: "colour" is not a known column. The columns are name, width, height, quantity, turn; remove any other.',
    ]);
  });

  it("asks for a heading over a column that has none", () => {
    expect(faults("name,width,height,,quantity,turn\n")[0]).toContain("column 4: this column has no heading");
  });
});
