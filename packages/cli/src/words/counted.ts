/** A number with its noun: `1 sheet`, `2 sheets`. */
export function counted(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}
