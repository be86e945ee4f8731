import { formatLength, formatSize, type Size, type Ticks, type Unit } from "@sheetwright/measure";
import { indexFaces } from "../expand/face-index.js";
import type { Piece } from "../expansion.js";
import type { NoPaper } from "../no-paper.js";
import type { Project } from "../project.js";
import { findHelp, type Help } from "./find-help.js";
import { fits, nearestWay, type Way, waysToCut } from "./ways-to-cut.js";

/**
 * Says why no paper can give a piece of a project, or `null` where one can: some sheet inside its trim, or some offcut, of
 * the papers it may be cut from is large enough in a form and a turn that pattern and required grain allow, and the trimmer's
 * longest cut frees it from there. How many sheets there are is not asked here. Names the paper that comes nearest, by how
 * much it is too small, and what would help: only what was tried out. Throws a RangeError where the piece names no paper of the project.
 *
 * @example
 * const { project } = readProject(`
 * sheetwright: 1
 * title: One card
 * copies: 12
 * papers:
 *   night: { cardstock: us-letter, grain: long }
 *   stars: { pad: 6 x 6, designs: { dots: 6 } }
 * cards:
 *   - name: Rooftops
 *     format: us-a7
 *     base: night
 *     front:
 *       - { mat: stars, border: 1/8 }
 * `);
 * const [base, mat] = expandProject(project).pieces;
 * explainNoPaper(project, base) // => null
 * const { design, over, turned, help } = explainNoPaper(project, mat);
 * [design, over.width / 40640, over.height / 40640, turned] // => ["stars.dots", 0, 0.75, false]
 * help.slice(0, 2) // => ["With a border of 1/2 in instead of 1/8 in it fits.", "Cut from night it fits."]
 * help[2] // => "Made up of 2 parts it fits: write join: { parts: 2, cover: night, width: 1/2 }."
 */
export function explainNoPaper(project: Project, piece: Piece): NoPaper | null {
  const index = indexFaces(project);
  const faces = piece.faces.flatMap((id) => index.get(id) ?? []);
  const { longestCut } = project.trimmer;
  const ways = waysToCut(piece, faces, longestCut);
  if (ways.some(fits)) return null;
  // In a project without faults some way is allowed; in any other, one that is forbidden tells the size at least.
  const nearest = nearestWay(ways) ?? nearestWay(waysToCut(piece, faces, longestCut, { grain: true }));
  if (nearest === null) {
    throw new RangeError(
      `Expected a piece that names a paper of the project, found ${JSON.stringify(piece.faces)}.`,
    );
  }
  const help = findHelp(project, piece, nearest).map((found) => sayHelp(found, project.units));
  const { form, from, usable, over, turned } = nearest;
  const { id, label, path } = piece;
  return {
    piece: id,
    label,
    path,
    width: form.width,
    height: form.height,
    design: from.design.id,
    usable,
    over,
    turned,
    help,
    message: [sayNearest(piece, nearest, longestCut, project.units), ...help].join(" "),
  };
}

function sayNearest(
  { label, forms }: Piece,
  { from, form, usable, over, turned, lying }: Way,
  longestCut: Ticks | null,
  unit: Unit,
): string {
  const sizes = forms.map((each) => say(each, unit)).join(" or ");
  if (over.width === 0 && over.height === 0 && longestCut !== null) {
    return (
      `The ${label}, ${sizes}, cannot be cut from ${from.design.name}, which gives ${say(usable, unit)}: that takes a ` +
      `longer cut than ${formatLength(longestCut, { unit })}, the longest of the trimmer (longest-cut).`
    );
  }
  const excess = [
    ...(over.width > 0 ? [`${formatLength(over.width, { unit })} too wide`] : []),
    ...(over.height > 0 ? [`${formatLength(over.height, { unit })} too high`] : []),
  ];
  const lies = turned
    ? ` turned a quarter, as ${say(lying, unit)},`
    : forms.length > 1
      ? ` as ${say(form, unit)}`
      : "";
  return (
    `The ${label} is ${sizes}, and none of its papers is large enough. Nearest comes ${from.design.name}, which ` +
    `gives ${say(usable, unit)}:${lies} it is ${excess.join(" and ")}.`
  );
}

function sayHelp(help: Help, unit: Unit): string {
  switch (help.kind) {
    case "turn":
      return sayTurn(help);
    case "fold": {
      const edge = help.flat.fold === "side" ? "side" : "top";
      return `Folded at the ${edge} instead, from ${say(help.flat, unit)}, it fits ${help.face.design.name}.`;
    }
    case "panels": {
      const { panels } = help.flat;
      return `With ${panels.length} panels, from ${say(help.flat, unit)}, it fits ${help.face.design.name}.`;
    }
    case "papers":
      return `Cut from ${list(help.names)} it fits.`;
    case "border": {
      const { from, by } = help;
      return from === null
        ? `With borders ${formatLength(by, { unit })} wider on each side it fits.`
        : `With a border of ${formatLength(from + by, { unit })} instead of ${formatLength(from, { unit })} it fits.`;
    }
    case "tool":
      return `A tool that cuts ${formatLength(help.longestCut, { unit })} would do.`;
    case "join":
      return sayJoin(help);
    case "untrimmed":
      return `Without the trim, ${help.face.design.name} is large enough.`;
    default: {
      const { size, grainAlong, orLarger } = help;
      const grain =
        grainAlong === null ? "" : ` with its grain along the side of ${formatLength(grainAlong, { unit })}`;
      return `A sheet of ${orLarger ? "at least " : ""}${say(size, unit)}${grain} would do.`;
    }
  }
}

function sayJoin({ join, line }: Extract<Help, { kind: "join" }>): string {
  const how =
    join.by === "parts"
      ? `Made up of ${join.parts} parts`
      : join.by === "ends"
        ? "Made up with ends of another paper"
        : "Cut short where another layer lies on it";
  return `${how} it fits: write ${line}.`;
}

function sayTurn({ face, against }: Extract<Help, { kind: "turn" }>): string {
  const { name, pattern } = face.face;
  const fits = `Turned a quarter it fits ${name}`;
  if (against === "grain")
    return `${fits}, if the grain is preferred and not required to run along one side.`;
  const free = `the pattern of ${name} (${pattern}) may lie on its side`;
  if (against === "pattern") return `${fits}, if ${free}.`;
  return `${fits}, if ${free} and its grain is not required to run along one side.`;
}

function list(names: readonly string[]): string {
  const shown = names.length > 4 ? [...names.slice(0, 3), `${names.length - 3} more`] : names;
  return shown.join(" or ");
}

function say({ width, height }: Size, unit: Unit): string {
  return formatSize(width, height, { unit });
}
