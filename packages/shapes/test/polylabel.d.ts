declare module "polylabel" {
  /** The point of a polygon, as rings of pairs, that is furthest from its line. */
  function polylabel(
    polygon: readonly (readonly (readonly [number, number])[])[],
    precision?: number,
  ): [number, number] & { readonly distance: number };

  export { polylabel as default };
}
