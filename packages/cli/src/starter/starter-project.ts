/** A small project to start from: a short lesson that can be planned as it is. */
export const STARTER_PROJECT = `# A workshop card, to start from. Everything after a # is for you; change the rest and plan again.
# Lengths are written as on a ruler: 8 1/2, 1/8, 4.25, 3 mm. Sizes are width x height as the thing stands.

sheetwright: 1                  # the version of this kind of file; leave it
title: Evening workshop
units: in                       # or mm, for every length without a unit of its own
copies: { guests: 8, samples: 1 }  # how often each card is made

# What your trimmer can do. Leave a line out and the usual is taken.
trimmer:
  longest-cut: 12               # most craft trimmers cut 12 inches
  smallest-offcut: 2 x 2        # smaller leftovers are not worth keeping

# The papers you have. The word before the colon is yours; the cards below call the paper by it.
papers:
  night:
    name: Night blue            # what is printed on the sheets
    cardstock: us-letter        # or iso-a4, 12 x 12, 8 1/2 x 11 ...
    count: 8                    # sheets on hand; leave it out for as many as needed
    grain: long                 # the way it bends easily: long, short, or unknown if you have not tried
    weight: 80 lb cover
    colour: "#22304f"           # for the pictures; in quotes, since # begins a comment
  cream:
    name: Cream
    cardstock: us-letter
    count: 5
    grain: long
    colour: "#f6efdf"
  copper:
    name: Copper glitter
    glitter: us-letter
    count: 3
    colour: "#b87543"
  stars:
    name: Stars
    pad: 6 x 6                  # a pad has several designs, each with so many sheets
    designs:
      dots: 6
      comets: { count: 6, pattern: one-way }  # has a top: never turned, and its top is marked

# The cards. A front is written from the bottom to the top: what comes later lies on what came before.
cards:
  - name: Lantern
    format: us-a2               # 4 1/4 x 5 1/2, for an A2 envelope; or size: 5 x 7
    base: night                 # the folded card itself
    front:
      - mat: copper             # a mat shows a border round what lies on it
        border: 1/8             # so much of the base shows on each side
      - panel: cream            # lies on the mat
        border: 1/8             # so much of the mat shows
      - strip: stars.comets     # runs from edge to edge
        width: 1 1/4
        bottom: 3/4             # from the lower edge of the panel
      - sentiment: cream        # a small strip with words
        size: 2 1/2 x 1/2
        text: Light the way
        top: 3/4
        mats:
          - { mat: night, border: 1/16 }

  - name: Two stars
    format: us-a2
    stand: lying                # 5 1/2 x 4 1/4, folded along the top
    base: cream
    copies: 4                   # fewer of this one
    front:
      - bands: [1, 2]           # two papers that meet: a third and two thirds
        runs: upright           # side by side; leave it out for one below the other
        border: 1/4
        papers: [night, stars.dots]
        seam: { cover: copper, width: 3/8 }  # a strip that hides where they meet

# What sheetwright check tells and you know already, by the word in brackets behind it. Take this out and see.
silence:
  - { check: score-first, because: heavy paper is always scored here }
`;
