import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { isDeepStrictEqual } from "node:util";
import { Ajv2020 } from "ajv/dist/2020.js";
import { beforeAll, describe, expect, it } from "vitest";
import {
  type ProjectPlanFile,
  projectPlanFile,
  projectPlanFileJsonSchema,
} from "../../src/project-plan/project-plan-file.js";
import { memoryFiles } from "../memory-files.js";
import { runIn } from "../run-in.js";

const published = fileURLToPath(new URL("../../schema/project-plan.schema.json", import.meta.url));
const validator = async () =>
  new Ajv2020({ strict: true, allowUnionTypes: true }).compile(JSON.parse(await readFile(published, "utf8")));

/** Uses every kind of layer, place, extent and paper, has a piece no paper can give, and too little of one paper. */
const EVERYTHING = `
sheetwright: 1
title: Everything there is
copies: { guests: 2, samples: 1 }
papers:
  night:
    { cardstock: us-letter, count: 1, grain: long, weight: 80 lb cover, thickness: 0.012, cost: 0.3, offcuts: [4 x 8] }
  cream: { paper: iso-a4, weight: 216 g/m2, trim: 1/8, back: { pattern: two-way, name: Ink } }
  stars: { pad: 6 x 6, designs: { dots: 2, comets: { count: 2, pattern: one-way } } }
cards:
  - name: All layers
    format: us-a2
    fold: either
    base: { paper: night, grain: require }
    front:
      - mat: cream.back
        border: { sides: 1/8, bottom: 1/4 }
        name: frame
      - bands: [1, 1, 1]
        border: 1/8
        papers: [stars, cream, [stars.dots, night]]
        seam: { cover: night, width: 1/4 }
      - panel: cream
        size: 1 x 1
        line: [upper third, left third]
        grain: { along: upright, need: prefer }
        layers:
          - panel: night
            border: { total: 1/8 }
      - strip: cream
        runs: upright
        width: 1/4
        length: 2
        right: 1/8
        bottom: 1/8
      - sentiment: cream
        size: 1 x 1/4
        text: Good night
        mats: [{ mat: night, border: 1/16 }]
      - panel: stars.comets
        size: 1/2 x 1/2
        left: 0
        top: 0
  - name: Too wide for the pad
    size: 8 x 3
    base: cream
    front: [{ strip: stars.dots, width: 1/2 }]
`;

let written: ProjectPlanFile;
beforeAll(async () => {
  const files = memoryFiles({ "/desk/cards.yaml": EVERYTHING });
  const argv = ["plan", "cards.yaml", "--out", "out", "--effort", "quick"];
  const { code, stderr } = await runIn(argv, { files });
  expect(stderr).toContain("Cannot be planned as asked");
  expect(code).toBe(1);
  written = JSON.parse(String(files.all.get("/desk/out/plan.json")));
});

describe("the published schema of a project's plan.json", () => {
  it("is the one made from the source (vitest -u renews it)", async () => {
    const text = await readFile(published, "utf8");
    const made: unknown = JSON.parse(JSON.stringify(projectPlanFileJsonSchema()));
    // The formatter lays the file out, so what it says is compared, not how it is laid out.
    const same = isDeepStrictEqual(JSON.parse(text), made);
    await expect(same ? text : `${JSON.stringify(made, null, 2)}\n`).toMatchFileSnapshot(published);
  });

  it("accepts a plan that uses every part of a project", async () => {
    const validate = await validator();
    validate(written);
    expect(validate.errors).toBeNull();
    expect(projectPlanFile.parse(written)).toEqual(written);
    expect(written.plan.noPaper).toHaveLength(1);
    expect(written.plan.shortages.some(({ withMore }) => withMore !== null)).toBe(true);
  });

  it("says what each file is and what it belongs to", () => {
    const kinds = written.files.map(({ name, what, group, layout, card }) => ({
      what,
      of: [group, layout].every((one) => one !== null) ? "layout" : card !== null ? "card" : "plan",
      name,
    }));
    expect(new Set(kinds.map(({ what, of }) => `${what}: ${of}`))).toEqual(
      new Set([
        "overview: plan",
        "drawing: layout",
        "cut list: layout",
        "cutter file: layout",
        "card: card",
        "measurements: card",
        "measurements as text: card",
      ]),
    );
  });

  it.each([
    ["a length that is no whole number", (file: ProjectPlanFile) => ({ ...file, hold: 1.5 })],
    ["a field that is not listed", (file: ProjectPlanFile) => ({ ...file, colour: "red" })],
    ["a field that is missing", (file: ProjectPlanFile) => ({ ...file, project: undefined })],
    ["another version", (file: ProjectPlanFile) => ({ ...file, version: 2 })],
    ["the plan of a list of pieces", (file: ProjectPlanFile) => ({ ...file, sheetwright: "plan" })],
    [
      "a layer of no kind",
      ({ project, ...file }: ProjectPlanFile) => ({
        ...file,
        project: {
          ...project,
          cards: project.cards.map((card) => ({
            ...card,
            surfaces: card.surfaces.map((one) => ({
              ...one,
              layers: one.layers.map((layer) => ({ ...layer, kind: "garland" })),
            })),
          })),
        },
      }),
    ],
    [
      "an unknown answer to whether there is enough",
      (file: ProjectPlanFile) => ({ ...file, plan: { ...file.plan, enough: "perhaps" } }),
    ],
  ])("refuses %s", async (_, damage) => {
    const validate = await validator();
    const damaged: unknown = JSON.parse(JSON.stringify(damage(written)));
    expect(validate(damaged)).toBe(false);
    expect(projectPlanFile.safeParse(damaged).success).toBe(false);
  });
});
