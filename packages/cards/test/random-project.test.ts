import fc from "fast-check";
import { expect, test } from "vitest";
import { checkProject } from "../src/index.js";
import { projectOf, randomProject } from "./random-project.js";

// What the properties of other tests are worth hangs on what the projects made at random hold.

const SAMPLE = fc.sample(randomProject(), { numRuns: 500, seed: 3 });

test("every feature of the format is in some project made at random", () => {
  const features = [
    '"units":"in"',
    '"units":"mm"',
    '"precision"',
    '"samples"',
    '"spares"',
    '"die"',
    '"dies"',
    '"margin"',
    '"die-machine"',
    '"platform"',
    '"shape":"circle"',
    '"shape":{"kind"',
    '"sizes":{"from"',
    '"sizes":[',
    '"stitched"',
    '":"half"}',
    '"shadow"',
    '"rates"',
    '"ribbons":{',
    '"consumables":{',
    '"price-factor"',
    '"cuts":"strips"',
    '"kerf"',
    '"longest-cut"',
    '"narrowest-hold"',
    '"smallest-offcut"',
    '"cardstock":"us-letter"',
    '"cardstock":"8 1/2 x 11"',
    '"cardstock":"iso-a4"',
    '"paper":"',
    '"glitter"',
    '"pad"',
    '"designs"',
    '"count":"as needed"',
    '"grain":"long"',
    '"grain":"unknown"',
    '"grain":"none"',
    '"pattern":"two-way"',
    '"pattern":"one-way"',
    '"weight"',
    '"cost"',
    '"trim":{',
    '"back"',
    '"offcuts"',
    '"format"',
    '"stand":"lying"',
    '"fold":"side"',
    '"fold":"top"',
    '"fold":"either"',
    '"base":{"paper":"night","grain":"require"}',
    '"grain":"ignore"',
    '"base":["',
    '"mat":"',
    '"panel":"stars"',
    '"panel":["',
    'stars.comets.back"',
    '"bands"',
    '"runs":"upright"',
    '"seam":"bare"',
    '"seam":{"cover"',
    '"seam":{"ribbon":"copper ribbon"',
    '"seam":{"tape"',
    '"seam":{"bare":true',
    '"gap"',
    '"bands":"two thirds and one third"',
    '"bands":{"widths":[',
    '"papers":[{"bands"',
    '"join":{"ends"',
    '"at":"one end"',
    '"join":{"parts":2',
    '"join":{"parts":3',
    '"fold":"easel"',
    '"front-paper"',
    '"insert":{"paper"',
    '"strip"',
    '"length"',
    '"sentiment"',
    '"text"',
    '"mats"',
    '"border":{"total"',
    '"border":{"sides"',
    '"border":{"left"',
    '"border":"3 mm"',
    '"border":0',
    '"left"',
    '"right"',
    '"top"',
    '"bottom"',
    '"line":"lower third"',
    '"line":["',
    '"name":"cloud bank"',
    '"grain":"across"',
    '"need":"require"',
    '"layers":[{',
    '"foam":"2 mm"',
    '"extras":[{',
    '"mass":"0.05 oz"',
    '"surface":"back"',
    '"small-part":true',
    '"envelope":"No. 10"',
    '"envelope":{"name"',
    '"envelope":{"size"',
    '"envelope":{"weight"',
    '"silence":[{"check":"bare-seam"',
    '"at":"cards[0]"',
    '"because"',
  ];
  const texts = SAMPLE.map((file) => JSON.stringify(file));
  expect(features.filter((feature) => !texts.some((text) => text.includes(feature)))).toEqual([]);
});

test("some have pieces that no paper can give, and more have none", () => {
  const short = SAMPLE.filter((file) =>
    checkProject(projectOf(file)).some(({ code }) => code === "no-paper"),
  );
  expect(short.length).toBeGreaterThan(SAMPLE.length / 20);
  expect(short.length).toBeLessThan(SAMPLE.length / 2);
});

test("the size of the projects can be bounded", () => {
  for (const file of fc.sample(randomProject({ cards: 1, copies: 2, layers: 1 }), { numRuns: 50, seed: 3 })) {
    const { cards } = projectOf(file);
    expect(cards).toHaveLength(1);
    expect(
      cards.every(
        ({ copiesFor, surfaces }) =>
          copiesFor.guests <= 2 && surfaces.every(({ layers }) => layers.length <= 1),
      ),
    ).toBe(true);
  }
});
