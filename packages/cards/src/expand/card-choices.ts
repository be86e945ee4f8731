import type { Choice, Design, GrainNeed, Layer } from "../project.js";

/** A choice of papers, with the path of the value that says it and what its grain is to do. */
export interface ChoiceAt {
  readonly choice: Choice;
  readonly path: string;
  /** The path of what says how the grain should run. */
  readonly grainPath: string;
  /** The sides that the grain may run along, one for each form of the piece; `null` where it is of no matter. */
  readonly grainAlong: readonly ("width" | "height" | null)[];
  readonly need: GrainNeed;
}

/**
 * All choices of papers that the layers of a card make, those of its base first, in the order of the file.
 *
 * @internal
 */
export function choicesOf(design: Design): readonly ChoiceAt[] {
  const { base, foldGrain, flats, path } = design;
  return [
    {
      choice: base,
      path: `${path}.base`,
      grainPath: `${path}.base.grain`,
      grainAlong: flats.map(({ scores, along }) =>
        scores.length === 0 ? null : along === "width" ? "height" : "width",
      ),
      need: foldGrain,
    },
    ...design.surfaces.flatMap(({ layers }) => layers.flatMap(choicesOfLayer)),
  ];
}

function choicesOfLayer(layer: Layer): readonly ChoiceAt[] {
  return [...ownChoices(layer), ...layer.layers.flatMap(choicesOfLayer)];
}

function ownChoices(layer: Layer): readonly ChoiceAt[] {
  const { path } = layer;
  const grainPath = `${path}.grain`;
  const free = { grainPath, grainAlong: [null], need: "ignore" } as const;
  const { grain } = layer;
  const asAsked = grain === null ? free : { grainPath, grainAlong: [grain.along], need: grain.need };
  if (layer.kind === "bands") {
    const { papers, seam } = layer;
    return [
      ...papers.map((choice, index) => ({ choice, path: `${path}.papers[${index}]`, ...asAsked })),
      ...(seam === null || seam === "bare"
        ? []
        : [{ choice: seam.cover, path: `${path}.seam.cover`, ...free }]),
    ];
  }
  const own = { choice: layer.paper, path: `${path}.${layer.kind}`, ...asAsked };
  if (layer.kind !== "sentiment") return [own];
  return [
    own,
    ...layer.mats.map(({ paper }, index) => ({ choice: paper, path: `${path}.mats[${index}].mat`, ...free })),
  ];
}
