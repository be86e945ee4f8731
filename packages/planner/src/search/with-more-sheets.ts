import type { Form, Packing, Problem, Sheet } from "@sheetwright/packing";
import type { GroupTask } from "../group/group-problem.js";

/**
 * The same pieces from as many whole sheets as it takes, or `null` where as many as needed are on hand already. Where
 * several designs will do, those on hand cost nothing and further ones, of which the id ends in `+`, cost what they cost,
 * so that few more are asked for. Offcuts stay as many as they are: nobody sells them.
 */
export function withMoreSheets(task: GroupTask): Problem | null {
  const { problem } = task;
  const whole = new Set(task.sheets.filter(({ offcut }) => offcut === null).map(({ sheet }) => sheet));
  const isLimited = ({ id, stock }: Sheet): boolean => whole.has(id) && stock !== undefined;
  if (!problem.sheets.some(isLimited)) return null;
  const lift = ({ stock: _, ...sheet }: Sheet): Sheet => sheet;
  if (whole.size === 1)
    return { ...problem, sheets: problem.sheets.map((sheet) => (isLimited(sheet) ? lift(sheet) : sheet)) };

  const limited = problem.sheets.filter(isLimited);
  const ids = new Set(limited.map(({ id }) => id));
  const more = limited.map((sheet) => ({ ...lift(sheet), id: sheet.id + MORE, name: `${sheet.name}, more` }));
  const onHand = problem.sheets.map((sheet) => (ids.has(sheet.id) ? { ...sheet, cost: 0 } : sheet));
  const withMore = (form: Form): Form => ({
    ...form,
    sheets: (form.sheets ?? []).flatMap((use) =>
      ids.has(use.sheet) ? [use, { ...use, sheet: use.sheet + MORE }] : [use],
    ),
  });
  return {
    ...problem,
    kinds: problem.kinds.map((kind) => ({ ...kind, forms: kind.forms.map(withMore) })),
    sheets: [...onHand, ...more],
  };
}

const MORE = "+";

/** How many sheets of each design a packing of {@link withMoreSheets} takes more than there are, without zeros. */
export function countMore(
  task: GroupTask,
  packing: Packing,
): readonly { readonly design: string; readonly more: number }[] {
  return task.designs
    .map((design) => {
      const stock = task.problem.sheets.find(({ id }) => id === design)?.stock ?? Number.POSITIVE_INFINITY;
      const used = packing.layouts
        .filter(({ sheet }) => sheet === design || sheet === design + MORE)
        .reduce((sum, { run }) => sum + run, 0);
      return { design, more: Math.max(0, used - stock) };
    })
    .filter(({ more }) => more > 0);
}
