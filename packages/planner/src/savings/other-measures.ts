import type { Layer, Project, Sides } from "@sheetwright/cards";
import { formatLength, type Ticks } from "@sheetwright/measure";
import type { Change } from "./savings.js";
import { allLayers, withDesign, withLayers } from "./with-layers.js";

/** Changes that make a layer a little smaller, by one step of the project's precision: a border, a width, a size. */
export function otherMeasures(project: Project): readonly Change[] {
  const { precision: step, units: unit } = project;
  const say = (ticks: Ticks): string => formatLength(ticks, { unit });
  return project.cards.flatMap((card) =>
    allLayers(card).flatMap((layer): Change[] => {
      const smaller = smallerLayer(layer, card.name, step, say);
      if (smaller === null) return [];
      const changed = withLayers(card, (one) => (one.path === layer.path ? smaller.of(one) : one));
      return [
        {
          subject: `measures of ${layer.path}`,
          words: smaller.words,
          path: layer.path,
          write: smaller.write,
          project: withDesign(project, changed),
        },
      ];
    }),
  );
}

interface Smaller {
  readonly words: string;
  readonly write: string;
  /** The layer made smaller, with what lies on it as it is. */
  readonly of: (layer: Layer) => Layer;
}

function smallerLayer(
  layer: Layer,
  card: string,
  step: Ticks,
  say: (ticks: Ticks) => string,
): Smaller | null {
  const name = `${layer.name ?? layer.kind} of ${card}`;
  if (layer.kind === "strip") {
    const width = layer.width - step;
    if (width <= 0) return null;
    return {
      words: `cut the ${name} ${say(step)} narrower`,
      write: `width: ${say(width)}`,
      of: (one) => ({ ...one, width }) as Layer,
    };
  }
  if (layer.kind === "sentiment") {
    const mats = layer.mats.map((mat) => ({ ...mat, border: mat.border - step }));
    if (mats.length === 0 || mats.some(({ border }) => border <= 0)) return null;
    return {
      words: `leave ${say(step)} less border on the mats of the ${name}`,
      write: `border: ${mats.map(({ border }) => say(border)).join(", ")}`,
      of: (one) => ({ ...one, mats }) as Layer,
    };
  }
  if (layer.kind === "die") return null;
  const { extent } = layer;
  if (extent.by === "size") {
    const [width, height] = [extent.size.width - step, extent.size.height - step];
    if (width <= 0 || height <= 0) return null;
    return {
      words: `cut the ${name} ${say(step)} smaller`,
      write: `size: ${say(width)} x ${say(height)}`,
      of: (one) => ({ ...one, extent: { ...extent, size: { width, height } } }) as Layer,
    };
  }
  const border = widened(extent.border, step);
  if (border === null) return null;
  return {
    words: `leave ${say(step)} more border round the ${name}`,
    write: `border: ${sayBorder(border, say)}`,
    of: (one) => ({ ...one, extent: { by: "border", border } }) as Layer,
  };
}

/** Each side that has a border has a step more; `null` where none has. */
function widened({ left, right, top, bottom }: Sides, step: Ticks): Sides | null {
  if (left + right + top + bottom === 0) return null;
  const more = (side: Ticks): Ticks => (side === 0 ? 0 : side + step);
  return { left: more(left), right: more(right), top: more(top), bottom: more(bottom) };
}

function sayBorder({ left, right, top, bottom }: Sides, say: (ticks: Ticks) => string): string {
  if (left === right && right === top && top === bottom) return say(left);
  return `{ left: ${say(left)}, right: ${say(right)}, top: ${say(top)}, bottom: ${say(bottom)} }`;
}
