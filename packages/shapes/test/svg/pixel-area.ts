import { Resvg } from "@resvg/resvg-js";

/** The area that a renderer fills of a page, in square millimetres: what share of its pixels, and how much of each. */
export function pixelArea(svg: string, [width, height]: readonly [number, number]): number {
  const image = new Resvg(svg, {
    fitTo: { mode: "width", value: 600 },
    font: { loadSystemFonts: false },
  }).render();
  // A copy at each access.
  const { pixels } = image;
  let filled = 0;
  for (let index = 3; index < pixels.length; index += 4) filled += pixels[index] as number;
  return (filled / 255 / (image.width * image.height)) * width * height;
}
