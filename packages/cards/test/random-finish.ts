// Extras, items on hand and envelopes made at random, in the shape of a project file.

import type { Draw, FileObject, FileValue } from "./random-draw.js";

/** What is not cut from paper, and an envelope that need not fit. */
export function randomFinish(draw: Draw): FileObject {
  const extra = (): FileObject => ({
    name: draw.one(["button", "knot", "bell"]),
    thickness: draw.length(draw.whole(1, 4)),
    ...(draw.sometimes(50) ? { count: draw.whole(1, 5) } : {}),
    ...(draw.sometimes(50) ? { mass: draw.one(["1.2 g", "0.05 oz", "1g"]) } : {}),
    ...(draw.sometimes(30) ? { surface: draw.one(["front", "inside", "back"]) } : {}),
    ...(draw.sometimes(30) ? { "small-part": draw.sometimes(50) } : {}),
    ...(draw.sometimes(30) ? { cost: draw.one([0.15, "0.0333"]) } : {}),
  });
  const inch = draw.unit === "in" ? 16 : 50;
  const size = () => draw.size(draw.whole(2 * inch, 9 * inch), draw.whole(2 * inch, 9 * inch));
  const name = () => draw.one(["us-a7", "env-us-a2", "iso-c6", "No. 10", "us-sq-6.25"]);
  const weight = () => draw.one(["24 lb bond", "24 lb", "70 lb", "100 gsm"]);
  const envelope = (): FileValue =>
    draw.one([
      name,
      size,
      () => ({ name: name(), weight: weight() }),
      () => ({ size: size() }),
      () => ({ weight: weight() }),
      () => ({ name: name(), cost: draw.one([0.2, "0.155"]) }),
    ])();
  return {
    ...(draw.sometimes(15) ? { extras: Array.from({ length: draw.whole(1, 3) }, extra) } : {}),
    ...(draw.sometimes(20) ? { envelope: envelope() } : {}),
  };
}

/** Some of the extras that cards may have, and a roll of what none has: the ribbons at random are of several widths. */
export function randomItems(draw: Draw): FileObject {
  const sold = (): FileObject => ({
    ...(draw.sometimes(70) ? { count: draw.one([0, 3, 40, "as needed"]) } : {}),
    ...(draw.sometimes(40) ? { cost: draw.one([0.15, "2.4"]) } : {}),
    ...(draw.sometimes(40) ? { pack: draw.one([12, { items: 6 }, { items: 4, cost: 1.1 }]) } : {}),
  });
  return {
    ...(draw.sometimes(60) ? { Button: draw.sometimes(30) ? draw.whole(0, 30) : sold() } : {}),
    ...(draw.sometimes(60) ? { knot: sold() } : {}),
    ...(draw.sometimes(40) ? { "green ribbon": { length: draw.one(["3 yd", "2.5 m", 40]), ...sold() } } : {}),
  };
}
