/** The smallest project that there is. */
export const SMALLEST = `sheetwright: 1
title: One card
papers:
  cream: { cardstock: us-letter }
cards:
  - name: Plain
    format: us-a2
    base: cream
`;

/** A project that uses every key of the format. All of it is invented. */
export const EVERY_KEY = `sheetwright: 1
title: Lantern Night workshop
units: in
precision: 1/32
copies: { guests: 12, samples: 1 }
trimmer:
  cuts: strips
  kerf: 1/64
  longest-cut: 12
  narrowest-hold: 2
  smallest-offcut: 1 x 3
papers:
  night:
    cardstock: us-letter
    name: Night blue
    count: 20
    grain: long
    weight: 80 lb cover
    thickness: 0.012 in
    pattern: none
    colour: "#22304f"
    cost: 0.35
    pack: { sheets: 25, cost: 8.99 }
    trim: 1/8
    back: { pattern: two-way, colour: "#102040", name: Ink }
    offcuts:
      - 4 x 8 1/2
      - { size: 2 x 11, count: 3 }
  ember: { paper: 12 x 12, count: as needed, grain: width, trim: { left: 1/8, right: 0, top: 1/4, bottom: 0 } }
  copper: { glitter: iso-a4, weight: 300 gsm }
  stars:
    pad: 6 x 6
    grain: height
    count: 4
    pattern: two-way
    designs:
      dots: 6
      comets: { count: 6, pattern: one-way, name: Comets, colour: "#abc", cost: "0.20", back: {}, offcuts: [3 x 6] }
      rays: { cost: 1 }
      mist: as needed
cards:
  - name: Rooftops
    format: us-a7
    stand: lying
    fold: either
    base: { paper: night, grain: require }
    copies: 6
    front:
      - mat: copper
        border: { sides: 1/8, left: 1/4, right: 1/4, top: 1/16, bottom: 1/2 }
        layers:
          - panel: stars
            border: { total: 1/4 }
            foam: 1/16
      - bands: [1, 3]
        runs: upright
        size: 4 x 3
        right: 1/2
        top: 1/4
        papers: [[stars.comets, stars.dots], night.back]
        seam: { cover: night, width: 1/2 }
        grain: { along: upright, need: require }
      - strip: ember
        name: horizon
        runs: across
        width: 1/2
        length: 3
        left: 1
        bottom: 3/4
        grain: upright
      - sentiment: [night, ember]
        size: 2 x 1/2
        text: Good night
        line: [lower third, right third]
        mats:
          - { mat: copper, border: 1/16 }
          - mat: night
    extras:
      - { name: button, count: 2, thickness: 1/8, mass: 0.4 g, surface: front, small-part: true }
    envelope: { name: us-a7, weight: 24 lb bond }
  - name: Window
    size: 4 x 4
    base: ember
    envelope: { size: 4 1/2 x 4 1/2 }
    copies: { guests: 3, samples: 2 }
    front:
      - bands: [1, 1]
        papers: [night, stars.mist]
        seam: bare
      - { die: tag, paper: night, name: wish, left: 1/4, top: 1/4 }
      - die: disc
        size: 1 1/2
        paper: ember
        stitched: { inset: 1/16, marks: holes, dash: 2 mm, gap: 2 mm }
        trim: { bottom: half, left: 1/8 }
        mats:
          - { mat: night, die: scallops, border: 1/16 }
        bottom: 1/4
        right: 1/4
      - shape: { kind: rectangle, corners: round, radius: 1/8, window: { shape: oval, size: 1/2 x 3/4 } }
        size: 1 x 1 1/4
        paper: night
        stitched: 1/16
        shadow: { paper: ember, border: 1/16, fill-gaps: 1/16 }
        top: 1/4
        right: 1/4
dies:
  star: 2 x 2
  tag: { size: 1 x 2, blank: 2 x 3 }
  moon: { blank: 2 x 2, margin: 1/8 }
  disc: { shape: circle, sizes: { from: 1, to: 2, step: 1/4 }, stitched: { inset: 1/16, per-inch: 8 } }
  scallops: { shape: { kind: scalloped-circle, scallops: 20 }, sizes: [1 3/4, 2, 2 1/4] }
  wave: { shape: { kind: scalloped-oval, pitch: 1/4, depth: 1/16 }, size: 2 x 3, margin: 1/8 }
  comet: { shape: { kind: star, points: 6 }, size: 2 }
  tile: { shape: { kind: polygon, sides: 6, up: flat }, size: 2 }
  gate: { shape: { kind: arch, rise: 1/2 }, size: 2 x 3 }
  greeting: { shape: { kind: banner, tail: both, notch: 1/4 }, size: 3 x 1 }
  label: { shape: { kind: tag, cut: 1/4, hole: 1/8, hole-from-top: 1/4 }, size: 1 1/2 x 2 1/2, stitched: true }
die-machine: { platform: 6 x 9, margin: 3/16, narrowest-bridge: 1/16, strips: false }
rates: { currency: $, hour: 18.50, minutes-per-card: 12 }
silence:
  - { check: bare-seam, at: Rooftops, because: wanted so }
  - { check: unused-paper, because: rays and mist are for next year }
`;
