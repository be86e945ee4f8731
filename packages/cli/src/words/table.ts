/** Lines up the cells of rows in columns, two spaces apart. */
export function table(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = (rows[0] ?? []).map((_, column) =>
    rows.reduce((widest, cells) => Math.max(widest, [...(cells[column] ?? "")].length), 0),
  );
  return rows.map((cells) =>
    cells
      .map((cell, column) => cell + " ".repeat(Math.max(0, (widths[column] ?? 0) - [...cell].length)))
      .join("  ")
      .trimEnd(),
  );
}
