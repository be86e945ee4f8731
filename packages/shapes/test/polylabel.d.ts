declare module "polylabel" {
  /** The point of a polygon, as rings of pairs, that is furthest from its line. */
  // biome-ignore lint/style/noDefaultExport: the package has no other.
  export default function polylabel(
    polygon: readonly (readonly (readonly [number, number])[])[],
    precision?: number,
  ): [number, number] & { readonly distance: number };
}
