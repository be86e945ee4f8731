import { allowedTurns, type Design, type Paper, type Piece, type Project } from "@sheetwright/cards";
import { faceOf, facesById } from "../group/faces-by-id.js";
import { type PlanAsyncOptions, planAsync } from "../plan.js";
import type { Plan } from "../plan-model.js";
import { provenPlan } from "../verify/proven-plan.js";

/** How many copies of a card papers give, and a plan of just these; `null` where it is none. */
export interface MostCopies {
  readonly copies: number;
  readonly plan: Plan | null;
  readonly cancelled: boolean;
}

/**
 * The most copies of one card that the papers of a project give, as far as a search finds them: first as many as the areas
 * allow are asked for, of which the plan completes some; from there on more are asked for in growing steps, and what lies
 * between the last that could be made and the first that could not is halved. All pieces of every copy are planned then.
 */
export async function mostCopies(
  project: Project,
  card: Design,
  pieces: readonly Piece[],
  options: PlanAsyncOptions,
): Promise<MostCopies> {
  const limit = limitByArea(project.papers, pieces);
  let cancelled = false;
  const attempt = async (copies: number): Promise<Plan> => {
    const one = { ...card, copies, copiesFor: { guests: copies, samples: 0 } };
    const { cutAlready: _, ...rest } = project;
    const asked: Project = { ...rest, cards: [one] };
    const found = await planAsync(asked, options);
    cancelled ||= found.search.cancelled;
    return provenPlan(asked, found);
  };
  if (limit === 0) return { copies: 0, plan: null, cancelled };
  let best: { readonly copies: number; readonly plan: Plan | null } = { copies: 0, plan: null };
  const take = async (copies: number): Promise<boolean> => {
    const found = await attempt(copies);
    if (found.enough !== "yes") return false;
    best = { copies, plan: found };
    return true;
  };
  const first = await attempt(limit);
  if (first.enough === "yes") return { copies: limit, plan: first, cancelled };
  let tooMany = limit;
  const complete = first.complete[0]?.complete ?? 0;
  if (complete > 0 && !cancelled && !(await take(complete))) tooMany = complete;
  for (let step = 1; !cancelled && best.copies + step < tooMany; step *= 2) {
    const copies = best.copies + step;
    if (await take(copies)) continue;
    tooMany = copies;
    break;
  }
  while (!cancelled && tooMany - best.copies > 1) {
    const copies = Math.floor((best.copies + tooMany) / 2);
    if (!(await take(copies))) tooMany = copies;
  }
  return { ...best, cancelled };
}

/** More copies than this do not fit: of some piece the papers that it may be cut from have no more area. */
function limitByArea(papers: readonly Paper[], pieces: readonly Piece[]): number {
  const faces = facesById(papers);
  const limits = pieces.map((piece) => {
    const designs = new Map(
      piece.faces
        .map((id) => faceOf(faces, id))
        .filter(({ paper, face }) =>
          piece.forms.some((form) => allowedTurns(form, face.pattern, paper.grain, piece.grainNeed) !== null),
        )
        .map(({ paper, design }) => [design.id, { paper, design }]),
    );
    let area = 0n;
    for (const { paper, design } of designs.values()) {
      area += BigInt(design.count ?? 0) * BigInt(paper.sheet.width) * BigInt(paper.sheet.height);
      for (const { width, height, count } of design.offcuts)
        area += BigInt(count) * BigInt(width) * BigInt(height);
    }
    const [smallest = 1n] = piece.forms
      .map(({ width, height }) => BigInt(width) * BigInt(height))
      .sort((a, b) => (a < b ? -1 : 1));
    return Number(area / smallest);
  });
  return Math.min(MOST_COPIES, ...limits);
}

/** No project has more copies of a card than this. */
const MOST_COPIES = 100_000;
