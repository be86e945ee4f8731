/** `1 cut`, `3 cuts`; the plural is the singular with an s unless given. */
export function countOf(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** `Cut 3 sheets like this`, or for a run of one `Cut 1 sheet like this`. */
export function runInWords(run: number): string {
  return `Cut ${countOf(run, "sheet")} like this`;
}
