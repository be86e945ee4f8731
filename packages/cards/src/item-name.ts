/**
 * A name of an item as two names are compared: whatever its capitals and the spaces round it, `Copper ribbon` is the ribbon
 * that a card calls `copper ribbon`.
 *
 * @example
 * itemKey(" Copper ribbon ") // => "copper ribbon"
 */
export function itemKey(name: string): string {
  return name.trim().toLowerCase();
}
