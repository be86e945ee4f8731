import type { BandParts, Choice, Design, GrainNeed, Layer, LayerJoin } from "../project.js";
import { isCovering, isOfPaper, seamOf } from "./seam-of.js";

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
  const { base, frontPaper, insert, foldGrain, flats, path } = design;
  const alongFolds = flats.map(({ scores, along }) =>
    scores.length === 0 ? null : along === "width" ? ("height" as const) : ("width" as const),
  );
  return [
    {
      choice: base,
      path: `${path}.base`,
      grainPath: `${path}.base.grain`,
      grainAlong: alongFolds,
      need: foldGrain,
    },
    ...(frontPaper === undefined
      ? []
      : [
          {
            choice: frontPaper,
            path: `${path}.front-paper`,
            grainPath: `${path}.front-paper`,
            grainAlong: [null],
            need: "ignore" as const,
          },
        ]),
    ...(insert === undefined
      ? []
      : [
          {
            choice: insert.paper,
            path: `${insert.path}.paper`,
            grainPath: `${insert.path}.grain`,
            grainAlong: alongFolds,
            need: insert.grain,
          },
        ]),
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
  if (layer.kind === "bands") return choicesOfBands(layer, path, asAsked);
  const own = {
    choice: layer.paper,
    path: `${path}.${layer.kind === "die" ? "paper" : layer.kind}`,
    ...asAsked,
  };
  if (layer.kind === "die") {
    const { mats = [], shadow } = layer;
    return [
      own,
      ...mats.map(({ paper }, index) => ({ choice: paper, path: `${path}.mats[${index}].mat`, ...free })),
      ...(shadow === undefined ? [] : [{ choice: shadow.paper, path: `${path}.shadow.paper`, ...free }]),
    ];
  }
  if (layer.kind !== "sentiment") return [own, ...choicesOfJoin(layer.join, path, free)];
  return [
    own,
    ...layer.mats.map(({ paper }, index) => ({ choice: paper, path: `${path}.mats[${index}].mat`, ...free })),
  ];
}

/** Those of bands and of bands that divide them, and of what covers their seams. */
function choicesOfBands(
  bands: BandParts,
  path: string,
  asAsked: Pick<ChoiceAt, "grainPath" | "grainAlong" | "need">,
): readonly ChoiceAt[] {
  const { cover } = seamOf(bands);
  const free = { grainPath: asAsked.grainPath, grainAlong: [null], need: "ignore" } as const;
  return [
    ...bands.papers.flatMap((paper, index) => {
      const own = `${path}.papers[${index}]`;
      return "faces" in paper
        ? [{ choice: paper, path: own, ...asAsked }]
        : choicesOfBands(paper, own, asAsked);
    }),
    ...(isCovering(cover) && isOfPaper(cover)
      ? [{ choice: cover, path: `${path}.seam.cover`, ...free }]
      : []),
  ];
}

/** The paper of its ends, and of what covers its seams. */
function choicesOfJoin(
  join: LayerJoin | undefined,
  path: string,
  free: Pick<ChoiceAt, "grainPath" | "grainAlong" | "need">,
): readonly ChoiceAt[] {
  if (join === undefined || join.by === "hide") return [];
  const { cover } = seamOf(join);
  return [
    ...(join.by === "ends" ? [{ choice: join.paper, path: `${path}.join.ends`, ...free }] : []),
    ...(isCovering(cover) && isOfPaper(cover)
      ? [{ choice: cover, path: `${path}.join.cover`, ...free }]
      : []),
  ];
}
