import { z } from "zod";
import { says } from "../wording.js";
import { BAND_GROUPS, bandPapers, bandShares, seam } from "./band-schema.js";
import { JOIN_GROUPS, join } from "./join-schema.js";
import { type Kinds, oneOfKinds } from "./kinds.js";
import { choice, length, run, text } from "./scalars.js";
import { shape, shapeSize, stitched } from "./shape-schema.js";

/** The most layers in one list. */
const MOST_LAYERS = 100;

const lineWord = z.enum(["upper third", "lower third", "left third", "right third"], says("lineWord"));
const line = z.union(
  [lineWord, z.array(lineWord, says("line")).min(1, says("line")).max(2, says("line"))],
  says("line"),
);

const borderSides = z.strictObject(
  {
    sides: length.optional().describe("Border on each side that is not named. Default: 0."),
    left: length.optional().describe("Border on the left."),
    right: length.optional().describe("Border on the right."),
    top: length.optional().describe("Border at the top."),
    bottom: length.optional().describe("Border at the bottom."),
    total: length.optional().describe("The whole difference in size, half of it on each side; alone."),
  },
  says("borderSides"),
);
const border = z.union([length, borderSides], says("border"));

const along = z.enum(["upright", "across"], says("along"));
const layerGrainKeys = z.strictObject(
  {
    along: along.describe("upright: along the height of the layer as it stands; across: along its width."),
    need: z
      .enum(["prefer", "require"], says("need"))
      .optional()
      .describe("How much it counts. Default: prefer."),
  },
  says("layerGrainKeys"),
);
const grain = z.union([along, layerGrainKeys], says("layerGrain"));

const sentimentMat = z.strictObject(
  {
    mat: choice.describe("The paper of the mat."),
    border: length
      .optional()
      .describe("Border that shows on each side, of a die cut at least. Default: 1/8 in (3 mm)."),
    die: z
      .union([z.string(), z.number()], says("dieName"))
      .optional()
      .describe("Of a die cut: the die that cuts the mat. Default: that of the layer."),
  },
  says("sentimentMat"),
);

const side = z.union([z.literal("half"), length], says("cutOffSide"));
const cutOff = z.strictObject(
  {
    left: side.optional().describe("Cut off the left side. Default: 0."),
    right: side.optional().describe("Cut off the right side. Default: 0."),
    top: side.optional().describe("Cut off the top. Default: 0."),
    bottom: side.optional().describe("Cut off the bottom. Default: 0."),
  },
  says("cutOff"),
);

const shadow = z.strictObject(
  {
    paper: choice.describe("Its paper."),
    border: length
      .optional()
      .describe("How far it shows all round, of the shape's own form. Default: 1/8 in (3 mm)."),
    "fill-gaps": length
      .optional()
      .describe("Gaps and windows narrower than this are filled. Default: 3/32 in (2.5 mm)."),
  },
  says("shadow"),
);

const PLACE = ["left", "right", "top", "bottom", "line"];
const ALL = ["name", "grain", "foam", "layers"];
const CUT = ["stitched", "trim", "mats", "shadow"];

/** The kinds of layer. */
export const LAYER_KINDS = {
  mat: { noun: "a mat", required: [], optional: ["border", "size", "join", ...PLACE, ...ALL] },
  panel: { noun: "a panel", required: [], optional: ["border", "size", "join", ...PLACE, ...ALL] },
  bands: {
    noun: "bands",
    required: ["papers"],
    optional: ["runs", "seam", "border", "size", ...PLACE, ...ALL],
  },
  strip: { noun: "a strip", required: ["width"], optional: ["runs", "length", "join", ...PLACE, ...ALL] },
  die: { noun: "a die-cut layer", required: ["paper"], optional: ["size", ...CUT, ...PLACE, ...ALL] },
  shape: {
    noun: "a layer cut to a shape",
    required: ["paper", "size"],
    optional: [...CUT, ...PLACE, ...ALL],
  },
  sentiment: { noun: "a sentiment", required: ["size"], optional: ["text", "mats", ...PLACE, ...ALL] },
} as const satisfies Kinds;

/** What lies on a card's front, or on another layer. */
export const layerSchema = z
  .strictObject(
    {
      mat: choice.optional().describe("A mat, which shows a border round what lies on it: its paper."),
      panel: choice.optional().describe("A panel: its paper."),
      bands: bandShares
        .optional()
        .describe(
          "Bands that meet edge to edge: their widths in proportion, such as [1, 3], in words, or as lengths.",
        ),
      strip: choice.optional().describe("A strip from edge to edge of what carries it: its paper."),
      die: z
        .union([z.string(), z.number()], says("dieName"))
        .optional()
        .describe("A layer cut by a die: the name of the die, of the project or on its shelf."),
      shape: shape
        .optional()
        .describe(
          "A layer cut to a shape by a cutting machine or by hand: the name of the shape, such as circle, or keys.",
        ),
      sentiment: choice.optional().describe("A small strip with words: its paper."),
      papers: bandPapers
        .optional()
        .describe("The papers of the bands, as many as there are bands, from the top or from the left."),
      runs: run
        .optional()
        .describe(
          "across: bands lie one below the other, a strip lies level; upright: side by side, it stands. Default: across.",
        ),
      border: border
        .optional()
        .describe("What shows of the carrier on each side. Default, where there is no size: 1/8 in (3 mm)."),
      paper: choice.optional().describe("The paper of what is cut to a shape."),
      size: shapeSize
        .optional()
        .describe(
          "Width x height as it stands, instead of a border; of a die the size where it has several, of a circle and its like one length.",
        ),
      stitched: stitched
        .optional()
        .describe(
          "A line of stitches inside the edge of what is cut to a shape: true, how far from the edge, or keys. Default: as the die presses.",
        ),
      trim: cutOff
        .optional()
        .describe(
          "What is cut straight off a shape, and off all that lies beneath it, such as { bottom: half }. Default: nothing.",
        ),
      shadow: shadow
        .optional()
        .describe("A layer of another paper beneath a shape: its outline, grown all round. Default: none."),
      width: length.optional().describe("Width of a strip."),
      length: length.optional().describe("Length of a strip. Default: from edge to edge of what carries it."),
      seam: seam.optional().describe("What covers the seams between bands, or bare. Default: nothing."),
      join: join
        .optional()
        .describe(
          "How a mat, a panel or a strip is made up where its paper is smaller, such as { parts: 2 }.",
        ),
      text: text.optional().describe("The words of a sentiment, for the picture."),
      mats: z
        .array(sentimentMat, says("mats"))
        .max(MOST_LAYERS, says("mats"))
        .optional()
        .describe(
          "The mats of a sentiment or of a die cut, from the inside out; of a die cut each is the next die up.",
        ),
      left: length
        .optional()
        .describe("Distance from the left edge of what carries it. Default: in the middle."),
      right: length.optional().describe("Distance from the right edge of what carries it."),
      top: length
        .optional()
        .describe("Distance from the top edge of what carries it. Default: in the middle."),
      bottom: length.optional().describe("Distance from the bottom edge of what carries it."),
      line: line
        .optional()
        .describe("The line that its middle lies on, such as lower third, instead of a distance."),
      name: text
        .optional()
        .describe("Your own word for it on labels. Default: the word of its kind, such as mat."),
      grain: grain
        .optional()
        .describe("The way the grain should run on it: upright or across. Default: of no matter."),
      foam: length
        .optional()
        .describe("Thickness of the foam under it, which lifts it and all on it. Default: glued flat."),
      get layers(): z.ZodOptional<z.ZodArray<typeof layerSchema>> {
        return layersSchema.optional().describe("What lies on this layer, from the bottom to the top.");
      },
    },
    says("layer"),
  )
  .meta({ id: "layer", description: "A layer on a card, or on another layer.", ...oneOfKinds(LAYER_KINDS) });

/** Layers from the bottom to the top. */
export const layersSchema = z.array(layerSchema, says("layers")).max(MOST_LAYERS, says("layers"));

/** Groups of keys by their wording. */
export const LAYER_GROUPS = {
  borderSides,
  ...BAND_GROUPS,
  ...JOIN_GROUPS,
  layerGrainKeys,
  sentimentMat,
  cutOff,
  shadow,
  layer: layerSchema,
};
