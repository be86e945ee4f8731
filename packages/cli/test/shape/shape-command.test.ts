import { inches, millimetres } from "@sheetwright/measure";
import { areaOf, catalogue, type NominalSize, outlineOf, type Shape, sizeOf } from "@sheetwright/shapes";
import { readOutlines } from "@sheetwright/shapes/svg";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const desk = (more: Readonly<Record<string, string>> = {}) =>
  memoryFiles({ "/desk/notes.txt": "mine", ...more });
const shape = (words: readonly string[], files = desk()) => runIn(["shape", ...words], { files });
const measured = async (words: readonly string[]) =>
  JSON.parse((await shape([...words, "--json"])).stdout) as Record<string, unknown>;
/** The text of a line of the summary. */
const said = (stdout: string, heading: string) =>
  new RegExp(`^${heading} +(.*)$`, "m").exec(stdout)?.[1] ?? "";

const BIRD = `<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="30mm" viewBox="0 0 50 30">
  <path d="M10 5h30v20H10z" fill-rule="evenodd"/></svg>`;

describe("a shape of the catalogue", () => {
  it("is measured", async () => {
    const { code, stdout, stderr } = await shape(["circle", "--size", "2in"]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(said(stdout, "Shape")).toBe("Circle, 2 in across");
    expect(said(stdout, "Box")).toBe("2 x 2 in");
    // pi and 2 pi.
    expect(said(stdout, "Area")).toBe("3.14 sq in");
    expect(said(stdout, "Cut")).toBe("~6 9/32 in long");
    expect(stdout).toContain("~ marks a length rounded to 1/64 in");
  });

  it("is measured in millimetres where that is the unit", async () => {
    const { stdout } = await shape(["square", "--size", "50", "--unit", "mm"]);
    expect(said(stdout, "Shape")).toBe("Square, 50 x 50 mm");
    expect(said(stdout, "Area")).toBe("25 sq cm");
    expect(said(stdout, "Cut")).toBe("200 mm long");
    expect(stdout).not.toContain("~");
  });

  it("is written as a file of its size, which is never replaced unless it may be", async () => {
    const files = desk();
    const argv = ["heart", "--size", "3in", "--out", "dies/heart.svg"];
    const { code, stdout } = await shape(argv, files);
    expect(code).toBe(0);
    expect(said(stdout, "File")).toBe("dies/heart.svg");
    const written = String(files.all.get("/desk/dies/heart.svg"));
    expect(readOutlines(written).box).toMatchObject({ width: inches(3), height: inches(3) });

    files.all.set("/desk/dies/heart.svg", "the maker's own");
    const again = await shape(argv, files);
    expect(again.code).toBe(2);
    expect(again.stderr).toContain(
      '--out: "dies/heart.svg" is there already, and it is not replaced without --force.',
    );
    expect(files.all.get("/desk/dies/heart.svg")).toBe("the maker's own");
    expect((await shape([...argv, "--force"], files)).code).toBe(0);
    expect(files.all.get("/desk/dies/heart.svg")).toBe(written);
    expect([...files.all.keys()].sort()).toEqual(["/desk/dies/heart.svg", "/desk/notes.txt"]);
  });

  it("leaves nothing behind where it cannot be written", async () => {
    for (const step of ["makeFolder", "write", "rename"] as const) {
      const files = desk({ "/desk/there.svg": "old" });
      const before = files.snapshot();
      files.failWhen = (failing) => (failing === step ? "ENOSPC" : undefined);
      const out = step === "rename" ? ["--out", "there.svg", "--force"] : ["--out", "a/b.svg"];
      const { code, stderr } = await shape(["heart", "--size", "3in", ...out], files);
      expect(code).toBe(2);
      expect(stderr).toContain("cannot be written");
      expect(files.snapshot()).toBe(before);
    }
  });

  it("has straight lines and rulers where they are asked for", async () => {
    const files = desk();
    await shape(["circle", "--size", "3in", "--out", "a.svg"], files);
    await shape(["circle", "--size", "3in", "--out", "b.svg", "--lines", "--rulers"], files);
    const [curves, lines] = ["a", "b"].map((name) => String(files.all.get(`/desk/${name}.svg`))) as [
      string,
      string,
    ];
    expect(curves).toMatch(/ d="M[^"]*C/);
    expect(lines).not.toMatch(/ d="M[^"]*C/);
    expect(curves).not.toContain('id="check"');
    expect(lines).toContain('id="check"');
  });

  it("takes its parameters, and tells how scallops came out", async () => {
    const star = await measured(["star", "--size", "3", "--set", "points=6", "--set", "Depth = 1/4"]);
    expect(star.shape).toEqual({ shape: "star", diameter: inches(3), points: 6, depth: inches(1 / 4) });
    const { stdout } = await shape(["scalloped-square", "--size", "3in", "--set", "pitch=3/8"]);
    expect(stdout).toMatch(/^Scallops {3}28 in all, .* deep\n {11}6 along its width, each 3\/8 in wide\n/m);
    const tag = await measured(["tag", "--size", "2x3in", "--set", "hole-from-top=1/2"]);
    expect(tag.shape).toMatchObject({ holeFromTop: inches(1 / 2) });
  });

  it("has a window", async () => {
    const ring = [
      "circle",
      "--size",
      "3",
      "--window",
      "polygon",
      "--window-size",
      "2",
      "--window-set",
      "sides=6",
    ];
    const found = await measured(ring);
    expect(found).toMatchObject({ windows: 1, parts: 1, size: { diameter: inches(3) } });
    const { stdout } = await shape(ring);
    expect(said(stdout, "Shape")).toBe("Circle, 3 in across, with a window: polygon, 2 in across");
    expect(said(stdout, "Cut")).toMatch(/ long, with the windows$/);
  });

  it("tells how narrow its paper is, and warns where it would tear", async () => {
    const ring = (window: string) =>
      shape(["square", "--size", "3", "--window", "square", "--window-size", window]);
    const wide = await ring("2 1/2");
    expect(said(wide.stdout, "Narrowest")).toBe("1/4 in of paper between two edges");
    expect(wide.stderr).toBe("");
    const thin = await ring("2 15/16");
    expect(said(thin.stdout, "Narrowest")).toBe("1/32 in of paper between two edges");
    expect(thin.code).toBe(0);
    expect(thin.stderr).toContain("Warning: The paper between two edges is 1/32 in wide at the narrowest");
    expect((await shape(["circle", "--size", "3"])).stdout).not.toContain("Narrowest");
  });

  it("is grown and shrunk", async () => {
    const grown = await measured(["rectangle", "--size", "2 x 3in", "--grow", "1/8"]);
    expect(grown).toMatchObject({ grown: inches(1 / 8), box: { width: inches(2.25), height: inches(3.25) } });
    const { stdout } = await shape(["rectangle", "--size", "2 x 3in", "--grow", "-1/8"]);
    expect(said(stdout, "Shape")).toBe("Rectangle, 2 x 3 in, shrunk by 1/8 in");
    expect(said(stdout, "Box")).toBe("1 3/4 x 2 3/4 in");
  });

  it("is stitched with dashes or holes, at the usual distance or another", async () => {
    const usual = await measured(["square", "--size", "2in", "--stitched"]);
    expect(usual.stitches).toMatchObject({ marks: "dashes", inset: inches(1 / 8), line: "whole" });
    const metric = await measured(["square", "--size", "50", "--unit", "mm", "--stitched"]);
    expect(metric.stitches).toMatchObject({ inset: millimetres(3) });
    const { stdout } = await shape(["square", "--size", "2in", "--stitched", "1/4", "--marks", "holes"]);
    expect(said(stdout, "Stitches")).toMatch(/^\d+ holes, one every .* in, 1\/4 in from the edge$/);
    const narrow = await shape(["circle", "--size", "1/4", "--stitched"]);
    expect(said(narrow.stdout, "Stitches")).toBe("none: it is too narrow for a line 1/8 in from its edge");
  });

  it("says the same as data, each of the catalogue", async () => {
    for (const { id } of catalogue.filter(({ id }) => id !== "frame")) {
      const isOneLength = ["diameter", "side"].some((one) =>
        catalogue.some((entry) => entry.id === id && entry.parameters.some(({ key }) => key === one)),
      );
      const set = id === "polygon" ? ["--set", "sides=5"] : [];
      const found = await measured([id, "--size", isOneLength ? "3in" : "3 x 4in", ...set]);
      expect(found).toMatchObject({ sheetwright: "shape", version: 1, grown: 0, written: null });
      const outline = outlineOf(found.shape as Shape);
      expect(found.area).toBe(Math.round((areaOf(outline) / 1600 ** 2) * 1000) / 1000);
      const size: NominalSize = sizeOf(found.shape as Shape);
      expect(found.size).toEqual(size);
      expect(Object.values(size)).toContain(inches(3));
    }
  });
});

describe("a file of the maker's own", () => {
  it("is measured at its size, grown and written", async () => {
    const files = desk({ "/desk/bird.svg": BIRD });
    const argv = ["bird.svg", "--grow", "2", "--unit", "mm", "--out", "bird-shadow.svg"];
    const { code, stdout, stderr } = await shape(argv, files);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    expect(said(stdout, "Shape")).toBe("read from bird.svg, grown by 2 mm");
    expect(said(stdout, "Box")).toBe("34 x 24 mm");
    const { box } = readOutlines(String(files.all.get("/desk/bird-shadow.svg")));
    expect(box).toMatchObject({ width: millimetres(34), height: millimetres(24) });
  });

  it("is refused with its mistakes and their lines", async () => {
    const open = BIRD.replace(
      'M10 5h30v20H10z" fill-rule="evenodd"',
      'M10 5h30v20" fill="none" stroke="#000"',
    );
    const files = desk({ "/desk/open.svg": open, "/desk/bad.svg": "<svg" });
    const { code, stderr } = await shape(["open.svg"], files);
    expect(code).toBe(2);
    expect(stderr).toMatch(/^open\.svg:2 path: The line is not closed/);
    const refused = await shape(["bad.svg"], files);
    expect(refused.code).toBe(2);
    expect(refused.stderr).toMatch(/^bad\.svg/);
  });

  it("has what was left out told", async () => {
    const files = desk({ "/desk/bird.svg": BIRD.replace("</svg>", "<script>1</script></svg>") });
    const { code, stderr } = await shape(["bird.svg"], files);
    expect(code).toBe(0);
    expect(stderr).toContain("Note: ");
    expect(stderr).toContain("(script-left-out)");
  });
});

describe("the list of all shapes", () => {
  it("tells what each is and what can be set", async () => {
    const { code, stdout, stderr } = await shape(["--list"]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
    for (const { id, about, parameters } of catalogue) {
      expect(stdout).toContain(`\n${id}: ${about.split(" ").slice(0, 3).join(" ")}`);
      for (const { key } of parameters)
        if (id !== "frame" && !["diameter", "side", "width", "height"].includes(key))
          expect(stdout).toContain(`\n  ${key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)} `);
    }
    expect(stdout.split("\n").every((line) => line.length <= 100)).toBe(true);
  });

  it("is drawn on a page", async () => {
    const files = desk();
    const { code, stdout } = await shape(["--list", "--out", "shapes.svg", "--unit", "mm"], files);
    expect(code).toBe(0);
    expect(stdout).toContain("Written: shapes.svg");
    expect(String(files.all.get("/desk/shapes.svg"))).toContain('width="210mm"');
  });

  it("is the catalogue as data", async () => {
    const { stdout } = await shape(["--list", "--json"]);
    expect(JSON.parse(stdout)).toEqual({
      sheetwright: "shapes",
      version: 1,
      shapes: catalogue,
      written: null,
    });
  });
});

describe("a mistake", () => {
  it.each([
    [["hart", "--size", "3"], 'sheetwright shape: "hart" is not a shape. Did you mean heart?'],
    [["hexagon", "--size", "3"], "Write polygon --set sides=6."],
    [["heart"], "--size: missing. Give --size <size>, such as --size 3in."],
    [[], "sheetwright shape: the name of the shape is missing."],
    [
      ["circle", "--size", "three"],
      '--size: "three" is not a size, expected one length, such as 3in, or width x height',
    ],
    [["circle", "--size", "0"], '--size: "0" cannot be used: expected a length above 0.'],
    [["circle", "--size", "2 x 3"], "--size: size 2 x 3 in makes no circle, expected one size."],
    [
      ["star", "--size", "3", "--set", "pionts=6"],
      '--set: "pionts" is no parameter of a star, expected points or depth. Did you mean points?',
    ],
    [
      ["star", "--size", "3", "--set", "points"],
      '--set: "points" is no parameter, expected a key and a value',
    ],
    [
      ["star", "--size", "3", "--set", "points=many"],
      '--set: points: found "many", expected a whole number, such as 6.',
    ],
    [
      ["star", "--size", "3", "--set", "points=2"],
      "--set: points 2 makes no star, expected a whole number from 3 to 100.",
    ],
    [
      ["star", "--size", "3", "--set", "depth=8"],
      "--set: depth 8 in makes no star, expected from ~9/32 in to ~1 11/32 in",
    ],
    [["star", "--size", "3", "--set", "points=6", "--set", "points=7"], "points is set twice"],
    [["circle", "--size", "3", "--set", "diameter=2"], '"diameter" is told by the size. Leave it out.'],
    [["oval", "--size", "3 x 2", "--set", "points=2"], "an oval has no parameters but its size."],
    [["polygon", "--size", "3"], "--set: a polygon needs its sides: 3 to 100. Give --set sides=6."],
    [
      ["banner", "--size", "3 x 1", "--set", "tail=up"],
      '--set: tail: found "up", expected right, left, both or down.',
    ],
    [
      ["circle", "--size", "3", "--window", "square", "--window-size", "3"],
      "--window-size: the window does not fit into the shape.",
    ],
    [["circle", "--size", "3", "--window", "square"], "--window-size: missing."],
    [["circle", "--size", "3", "--window-size", "2"], "--window-size: this has no meaning without --window"],
    [["circle", "--size", "3", "--grow", "-2"], "--grow: nothing is left of the shape"],
    [["circle", "--size", "3", "--grow", "wide"], '--grow: "wide" is not a length'],
    [["circle", "--size", "3", "--marks", "holes"], "--marks: this has no meaning without --stitched."],
    [
      ["circle", "--size", "2", "--stitched", "1/64", "--marks", "holes"],
      "--stitched: holes cannot be made so near the edge.",
    ],
    [["--list", "--size", "3"], "--size: this has no meaning with --list."],
    [["--list", "heart"], '"heart": no shape is expected with --list'],
    [["bird.svg", "--size", "3"], "--size: this has no meaning for a file, which is taken at its own size."],
    [["bird.svg"], 'sheetwright shape: "bird.svg" cannot be read: there is no such file'],
    [
      ["circle", "--size", "3", "--out", "disc.pdf"],
      '--out: "disc.pdf" is no drawing by its name, expected one that ends in .svg. Write "disc.svg".',
    ],
    [["circle", "--size", "3", "--force"], "--force: this has no meaning without --out"],
    [["circle", "--size", "3", "--out", "."], "is no drawing by its name"],
    [["circle", "--size", "3", "--size", "4"], "--size: given 2 times, expected once."],
    [["circle", "oval", "--sise", "3"], "--sise: this option is not known. Did you mean --size?"],
    [["circle", "--size"], "--size: its value is missing. Give --size <size>, such as --size 3in."],
    [["circle", "--size", "3", "--unit", "cm"], '--unit: found "cm", expected in or mm.'],
  ] as const)("in %j is told", async (words, message) => {
    const { code, stdout, stderr } = await shape(words);
    expect({ code, stdout }).toEqual({ code: 2, stdout: "" });
    expect(stderr).toContain(message);
    expect(stderr).toMatch(/ faults?; no file was written\./);
  });

  it("is data where that is asked for", async () => {
    const { code, stdout } = await shape(["hart", "--size", "3", "--json"]);
    expect(code).toBe(2);
    expect(JSON.parse(stdout)).toMatchObject({ sheetwright: "faults", faults: [{ code: "unknown-shape" }] });
  });

  it("of any words ends with an exit code and a sentence", async () => {
    const words = [
      "circle",
      "star",
      "tag",
      "--size",
      "3",
      "2 x 3",
      "--set",
      "points=5",
      "hole=1/8",
      "depth=1/4",
      "--window",
      "--window-size",
      "1",
      "--grow",
      "-1/8",
      "--stitched",
      "1/8",
      "--marks",
      "holes",
      "--list",
      "--json",
      "--unit",
      "mm",
      "x.svg",
      "",
    ];
    await fc.assert(
      fc.asyncProperty(fc.array(fc.constantFrom(...words), { maxLength: 8 }), async (argv) => {
        const { code, stdout, stderr } = await shape(argv);
        expect([0, 2]).toContain(code);
        expect(stderr).not.toContain("fault of its own");
        expect(code === 0 ? stdout : stderr).not.toBe("");
      }),
      { numRuns: 60 },
    );
  });
});
