import {
  type Design,
  expandProject,
  type Face,
  type Layer,
  type Paper,
  type Project,
} from "@sheetwright/cards";
import type { Change } from "./savings.js";
import { withDesign, withLayers } from "./with-layers.js";

/** Changes that let pieces lie another way on the sheet: on patterned paper, and against the grain. */
export function letTurn(project: Project): readonly Change[] {
  return [...letPatternsTurn(project), ...letGrainGo(project)];
}

/** Patterned paper, one design at a time, as if its pattern could be looked at from every side. */
function letPatternsTurn(project: Project): readonly Change[] {
  const { pieces } = expandProject(project);
  const changes: Change[] = [];
  for (const paper of project.papers) {
    for (const design of paper.designs) {
      for (const side of ["front", "back"] as const) {
        const face = design[side];
        if (face === null || face.pattern === "none") continue;
        const cut = pieces.filter(
          ({ faces, forms }) =>
            faces.includes(face.id) && forms.some(({ width, height }) => width !== height),
        );
        if (cut.length === 0) continue;
        const purposes = [...new Set(cut.map(({ purpose }) => purpose))];
        const turned: Face = { ...face, pattern: "none" };
        const papers = project.papers.map((one): Paper => {
          if (one.id !== paper.id) return one;
          const designs = one.designs.map((own) => (own.id === design.id ? { ...own, [side]: turned } : own));
          return { ...one, designs };
        });
        const own = paper.material === "pad" ? `.designs.${design.id.slice(paper.id.length + 1)}` : "";
        changes.push({
          subject: `pattern of ${face.id}`,
          words: `let the ${purposes.join(" and ")} pieces turn on ${face.name}`,
          path: `papers.${paper.id}${own}${side === "back" ? ".back" : ""}`,
          write: "pattern: none",
          project: { ...project, papers },
        });
      }
    }
  }
  return changes;
}

/** The grain of a whole card as a wish, where it is required somewhere on it. */
function letGrainGo(project: Project): readonly Change[] {
  return project.cards.flatMap((card) => {
    const relaxed = relaxedGrain(card);
    if (JSON.stringify(relaxed) === JSON.stringify(card)) return [];
    return [
      {
        subject: `grain of ${card.path}`,
        words: `let the grain of ${card.name} go`,
        path: card.path,
        write: "prefer instead of require at each grain",
        project: withDesign(project, relaxed),
      },
    ];
  });
}

function relaxedGrain(card: Design): Design {
  const { insert } = card;
  const relaxed = withLayers(card, (layer): Layer => {
    if (layer.grain?.need !== "require") return layer;
    return { ...layer, grain: { ...layer.grain, need: "prefer" } };
  });
  return {
    ...relaxed,
    foldGrain: card.foldGrain === "require" ? "prefer" : card.foldGrain,
    ...(insert?.grain === "require" ? { insert: { ...insert, grain: "prefer" } } : {}),
  };
}
