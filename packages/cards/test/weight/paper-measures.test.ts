import { inches, millimetres, TICKS_PER_INCH } from "@sheetwright/measure";
import { describe, expect, it } from "vitest";
import { type Paper, paperMeasures, readProject } from "../../src/index.js";

/** The paper of a project that has one, with a label as a maker writes it. */
function labelled(material: string, label: string): Paper {
  const size = material === "pad" ? "6 x 6, designs: { dots: 1 }" : "us-letter";
  const { project, faults } = readProject(
    `sheetwright: 1\ntitle: One\npapers: { own: { ${material}: ${size}${label === "" ? "" : `, ${label}`} } }\n` +
      "cards: [{ name: Plain, size: 2 x 2, base: own }]\n",
  );
  const [paper] = project?.papers ?? [];
  if (paper === undefined) throw new Error(faults.map(({ message }) => message).join("\n"));
  return paper;
}

const measured = (material: string, label: string) => paperMeasures(labelled(material, label));

describe("the label of a paper", () => {
  // Worked examples of printer manuals, mills and converters, comparison and caliper charts; mills round: within 0.5 %.
  it.each([
    ["90 lb text", 133.218],
    ["100 lb cover", 270.42],
    ["28 lb bond", 105.3],
    ["40 lb text", 59.24],
    ["65 lb cover", 175],
    ["80 lb cover", 216],
    ["100 lb cover", 270],
    ["130 lb cover", 352],
    ["150 lb cover", 406],
    ["80 lb text", 118.4],
    ["65 lb cover", 176],
  ])("%s is the %d g/m2 of a worked example", (label, published) => {
    const { grammage } = measured("cardstock", `weight: ${label}`);
    expect(Math.abs(grammage.value / published - 1)).toBeLessThan(0.005);
    expect(grammage).toMatchObject({ basis: "given", readAs: null, orElse: null });
  });

  // A row of the equivalence table of a printer manual; the whole table is checked where pounds become grams.
  it.each([
    ["65 lb bond", 244],
    ["165 lb text", 244],
    ["90 lb cover", 244],
    ["111 lb bristol", 244],
    ["135 lb index", 244],
    ["150 lb tag", 244],
  ])("%s is %d g/m2, read in the grade that the label names", (label, published) => {
    const { value } = measured("cardstock", `weight: ${label}`).grammage;
    expect(Math.abs(value - published)).toBeLessThanOrEqual(0.025 * published);
  });

  it("in grams is taken as it stands", () => {
    expect(measured("paper", "weight: 216 gsm").grammage).toEqual({
      value: 216,
      basis: "given",
      readAs: null,
      orElse: null,
    });
  });

  it.each([
    ["cardstock", "cover"],
    ["glitter", "cover"],
    ["paper", "text"],
    ["pad", "text"],
  ])("in bare pounds is read for %s as %s weight, and marked as assumed", (material, grade) => {
    const { grammage, caliper } = measured(material, "weight: 80 lb");
    expect(grammage).toEqual({
      ...measured(material, `weight: 80 lb ${grade}`).grammage,
      basis: "assumed",
      readAs: grade,
    });
    expect(caliper.basis).toBe("assumed");
  });

  it("of 110 bare pounds may be cover or index, and is reckoned as the heavier", () => {
    const { grammage } = measured("cardstock", "weight: 110 lb");
    expect(grammage).toMatchObject({ basis: "assumed", readAs: "cover", orElse: "index" });
    // Computed from the basic sizes: 297.5 g/m2 of cover, 198.9 of index.
    expect(grammage.value).toBeCloseTo(297.5, 1);
    expect(measured("cardstock", "weight: 110 lb index").grammage.value).toBeCloseTo(198.9, 1);
    expect(measured("paper", "weight: 110 lb").grammage.orElse).toBeNull();
    expect(measured("cardstock", "weight: 90 lb").grammage.orElse).toBeNull();
  });
});

describe("the thickness of a paper", () => {
  it("is the maker's where she gives one", () => {
    const { caliper } = measured("cardstock", "weight: 80 lb cover, thickness: 0.012 in");
    expect(caliper).toEqual({ value: inches(0.012), basis: "given" });
  });

  // Caliper charts of the paper trade, computed for uncoated cover, in inches; within a tenth.
  it.each([
    ["65 lb cover", 0.009],
    ["80 lb cover", 0.0111],
    ["100 lb cover", 0.0138],
    ["110 lb cover", 0.0152],
    ["130 lb cover", 0.018],
    ["24 lb bond", 0.0048],
  ])("is estimated for %s as charts have it", (label, chart) => {
    const { caliper } = measured("cardstock", `weight: ${label}`);
    expect(Math.abs(caliper.value / TICKS_PER_INCH / chart - 1)).toBeLessThan(0.1);
    expect(caliper.basis).toBe("estimated");
  });

  it("tells the weight where only it is given", () => {
    const { grammage, caliper } = measured("cardstock", "thickness: 0.0138 in");
    expect(caliper.basis).toBe("given");
    // Caliper charts of the paper trade: 100 lb cover, 270 g/m2; within a tenth.
    expect(Math.abs(grammage.value / 270 - 1)).toBeLessThan(0.1);
    expect(grammage.basis).toBe("estimated");
  });

  it.each([
    ["cardstock", 216, inches(0.011)],
    ["glitter", 300, inches(0.018)],
    ["paper", 120, inches(0.006)],
    ["pad", 120, inches(0.006)],
  ])("and the weight of %s without a label are assumed, from memory", (material, grams, thickness) => {
    const { grammage, caliper } = measured(material, "");
    expect([grammage.value, grammage.basis]).toEqual([grams, "assumed"]);
    expect([caliper.value, caliper.basis]).toEqual([thickness, "assumed"]);
  });

  it("of glitter is estimated with its rough face: 0.45 mm of 300 g/m2 (from memory)", () => {
    const { caliper } = measured("glitter", "weight: 300 gsm");
    expect(caliper.value).toBe(millimetres(0.45));
  });
});
