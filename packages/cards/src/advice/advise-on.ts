import { formatLength, millimetres, TICKS_PER_INCH, type Ticks, type Unit } from "@sheetwright/measure";
import { expandProject } from "../expand/expand-project.js";
import { visibleAreas } from "../expand/visible-areas.js";
import type { Card, Expansion } from "../expansion.js";
import { explainNoPaper } from "../fit/explain-no-paper.js";
import type { Bands, Layer, Paper, Project } from "../project.js";
import type { Advice } from "./advice.js";
import { bareSeams } from "./bare-seams.js";

/** A cutting error of 1/16 in on both sides of a seam (common practice); in the metric trade 3 mm in all. */
const NARROWEST_COVER: Readonly<Record<Unit, Ticks>> = { in: TICKS_PER_INCH / 8, mm: millimetres(3) };

/**
 * What a maker may want to know of a project without faults: papers that no card uses, seams that show, covers too narrow
 * for the error of a cut, layers of which nothing shows, unknown grain of a paper that is folded, pieces that no paper can
 * give. In the order of these words, and of the project. Throws a ProjectError where the project has faults.
 *
 * @example
 * const { project } = readProject(`
 * sheetwright: 1
 * title: One card
 * copies: 12
 * papers:
 *   night: { cardstock: us-letter }
 *   stars: { pad: 6 x 6, designs: { dots: 6 } }
 * cards:
 *   - name: Rooftops
 *     format: us-a7
 *     base: night
 *     front:
 *       - { bands: [1, 3], papers: [stars, night], size: 4 x 6 }
 * `);
 * adviseOn(project).map(({ code, path }) => [code, path]) // => [["bare-seam", "cards[0].front[0]"], ["grain-unknown", "papers.night"]]
 */
export function adviseOn(project: Project): readonly Advice[] {
  const expansion = expandProject(project);
  return [
    ...unusedPapers(project, expansion),
    ...project.cards.flatMap((design, index) => {
      const card = expansion.cards[index];
      return card === undefined
        ? []
        : design.surfaces
            .flatMap(({ layers }) => allBands(layers))
            .flatMap((bands) => adviseOnSeam(bands, card, expansion));
    }),
    ...expansion.cards.flatMap((card) => hiddenLayers(card, expansion)),
    ...unknownGrain(project),
    ...expansion.pieces.flatMap((piece) => {
      const found = explainNoPaper(project, piece);
      return found === null ? [] : [{ code: "no-paper", path: found.path, message: found.message } as const];
    }),
  ];
}

function unusedPapers({ papers }: Project, { pieces }: Expansion): readonly Advice[] {
  const used = new Set(pieces.flatMap(({ faces }) => faces));
  return papers.flatMap((paper): readonly Advice[] => {
    const idle = paper.designs.filter(
      ({ front, back }) => !used.has(front.id) && !used.has(back?.id ?? front.id),
    );
    if (idle.length === 0) return [];
    if (idle.length === paper.designs.length) {
      const message = `No card uses ${paper.name}. Leave it out, or name it in a card.`;
      return [{ code: "unused-paper", path: `papers.${paper.id}`, message }];
    }
    return idle.map(({ id, name }) => ({
      code: "unused-paper",
      path: `papers.${paper.id}.designs.${id.slice(paper.id.length + 1)}`,
      message: `No card uses the design ${name} of ${paper.name}.`,
    }));
  });
}

function adviseOnSeam(bands: Bands, card: Card, { pieces, units }: Expansion): readonly Advice[] {
  const say = (ticks: Ticks) => formatLength(ticks, { unit: units });
  const { seam, path } = bands;
  if (seam === "bare") return [];
  if (seam === null) {
    const first = card.layers.findIndex(({ piece: id }) =>
      pieces.some((piece) => piece.id === id && piece.path === bands.path),
    );
    const bare = bareSeams(bands, card.layers, first);
    if (bare.length === 0) return [];
    const where = list(bare.map((position) => say(position)));
    const start = bands.runs === "across" ? "top" : "left";
    const [seams, them, they] = bare.length > 1 ? ["seams", "them", "they are"] : ["seam", "it", "it is"];
    const message =
      `The ${seams} ${where} from the ${start} of these bands will show. ` +
      `Cover ${them} with a strip, or write \`seam: bare\` if ${they} to be seen.`;
    return [{ code: "bare-seam", path, message }];
  }
  const narrowest = NARROWEST_COVER[units];
  if (seam.width >= narrowest || bands.ratios.length < 2) return [];
  return [
    {
      code: "narrow-cover",
      path: `${path}.seam.width`,
      message:
        `A cover of ${say(seam.width)} may not hide its seam: cuts are up to ${say(narrowest / 2)} off on each side. ` +
        `Make it at least ${say(narrowest)} wide.`,
    },
  ];
}

function allBands(layers: readonly Layer[]): readonly Bands[] {
  return layers.flatMap((layer) => [...(layer.kind === "bands" ? [layer] : []), ...allBands(layer.layers)]);
}

function hiddenLayers(card: Card, { pieces }: Expansion): readonly Advice[] {
  const areas = new Map(card.surfaces.map(({ name }) => [name, visibleAreas(card, name)]));
  const hidden = pieces.filter(({ id }) => {
    const index = card.layers.findIndex(({ piece }) => piece === id);
    const surface = card.layers[index]?.surface;
    return surface !== undefined && areas.get(surface)?.layers[index] === 0n;
  });
  // Bands of one layer are told of together.
  return [...new Set(hidden.map(({ path }) => path))].map((path) => {
    const labels = hidden.filter((piece) => piece.path === path).map(({ label }) => label);
    const it = labels.length > 1 ? "them" : "it";
    const message = `Nothing of the ${list(labels)} shows: what lies above covers ${it} whole. Move ${it}, or leave ${it} out.`;
    return { code: "hidden-layer", path, message };
  });
}

function list(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}

function unknownGrain({ papers, cards }: Project): readonly Advice[] {
  const folded = new Set(
    cards
      .filter(
        ({ foldGrain, flats }) => foldGrain !== "ignore" && flats.some(({ scores }) => scores.length > 0),
      )
      .flatMap(({ base }) => base.faces),
  );
  const isFolded = ({ designs }: Paper) =>
    designs.some(({ front, back }) => folded.has(front.id) || (back !== null && folded.has(back.id)));
  return papers
    .filter((paper) => paper.grain === "unknown" && isFolded(paper))
    .map(({ id, name, sheet }) => {
      // A square sheet has no longer side.
      const words = sheet.width === sheet.height ? ["width", "height"] : ["long", "short"];
      const message =
        `The grain of ${name} is not known, so folds may come out across it and crack. Bend a sheet one way and the ` +
        "other without creasing it: it gives more easily where the bend runs along the grain. " +
        `Then write grain: ${words.join(" or grain: ")}.`;
      return { code: "grain-unknown", path: `papers.${id}`, message };
    });
}
