// Projects made at random, as plain data in the shape of a project file, without contradictions by the way they are made:
// lengths are tracked in ticks while layers are put one on another. What makes a mat show is that the things directly on
// it stay off its left edge, all but strips across, which together are lower than it; and that nothing is laid over layers
// that hold mats of their own but do not carry what follows, since these come last in their list.

import { findNamedSize, inches, millimetres, type Size, type Ticks } from "@sheetwright/measure";
import fc from "fast-check";
import { formatFront, type Project, readProject, silenceableCodes } from "../src/index.js";
import { randomBands, randomJoin } from "./random-bands.js";
import { randomShapeLayer } from "./random-dies.js";
import { Draw, type FileObject, type FileValue } from "./random-draw.js";
import { randomFinish, randomItems } from "./random-finish.js";
import { type RandomPapers, randomPapers } from "./random-papers.js";
import { randomDieCut, randomDieMachine, randomRates, randomTrimmer } from "./random-tools.js";

/** How large the projects are. */
export interface RandomProjectOptions {
  /** Most cards. Default 3. */
  readonly cards?: number;
  /** Most copies for guests of a card. Default 12. */
  readonly copies?: number;
  /** Most layers of one list. Default 4. */
  readonly layers?: number;
}

/** Project files without contradictions, with every feature of the format in some of them. */
export function randomProject(options: RandomProjectOptions = {}): fc.Arbitrary<FileObject> {
  const { cards = 3, copies = 12, layers = 4 } = options;
  return fc.gen().map((value) => {
    const draw = new Draw(value, value(fc.constantFrom, "in" as const, "in" as const, "mm" as const));
    const precisionSteps = draw.one([1, 1, 1, 2]);
    const papers = randomPapers(draw);
    const room: Room = {
      draw,
      papers,
      precision: precisionSteps * draw.step,
      copies,
      most: layers,
      dies: new Map(),
    };
    const count = draw.whole(1, cards);
    const designs = Array.from({ length: count }, (_, index) => randomCard(room, index));
    return {
      sheetwright: 1,
      title: draw.one(["Lantern Night workshop", "Ember evening", "Rooftops & stars: part 2"]),
      ...(draw.unit === "mm" || draw.sometimes(50) ? { units: draw.unit } : {}),
      ...(precisionSteps > 1 || draw.sometimes(20) ? { precision: draw.length(precisionSteps) } : {}),
      ...(draw.sometimes(50) ? { copies: randomCopies(room) } : {}),
      ...(draw.sometimes(30) ? { trimmer: randomTrimmer(draw) } : {}),
      ...(draw.sometimes(20) ? { "die-machine": randomDieMachine(draw) } : {}),
      papers: papers.file,
      ...(draw.sometimes(25) ? { items: randomItems(draw) } : {}),
      ...(room.dies.size > 0 ? { dies: Object.fromEntries(room.dies) } : {}),
      ...(draw.sometimes(25) ? { rates: randomRates(draw) } : {}),
      cards: designs,
      ...(draw.sometimes(30) ? { silence: randomSilences(draw, count) } : {}),
    };
  });
}

/** The project of such a file; throws where the file has faults, since it should have none. */
export function projectOf(file: FileObject): Project {
  const { project, faults } = readProject(JSON.stringify(file));
  if (project === null) {
    const told = faults.map(({ path, message }) => `${path}: ${message}`).join("\n");
    throw new Error(`A project made at random has faults:\n${told}\n${JSON.stringify(file)}`);
  }
  return project;
}

interface Room {
  readonly draw: Draw;
  readonly papers: RandomPapers;
  readonly precision: Ticks;
  readonly copies: number;
  readonly most: number;
  /** The dies that the layers drawn so far name. Filled on the way. */
  readonly dies: Map<string, FileValue>;
}

function randomCopies({ draw, copies }: Room): FileValue {
  if (draw.sometimes(50)) return draw.whole(1, copies);
  return {
    guests: draw.whole(1, copies),
    ...(draw.sometimes(70) ? { samples: draw.whole(0, 2) } : {}),
    ...(draw.sometimes(30) ? { spares: draw.whole(0, 2) } : {}),
  };
}

/** Silences of which no two are of one check. */
function randomSilences(draw: Draw, cards: number): readonly FileValue[] {
  const first = draw.whole(0, silenceableCodes.length - 1);
  return Array.from({ length: draw.whole(1, 3) }, (_, index) => ({
    check: silenceableCodes[(first + index) % silenceableCodes.length] ?? "bare-seam",
    ...(draw.sometimes(60)
      ? { at: draw.one(["cards", `cards[${draw.whole(0, cards - 1)}]`, "cards[0].base", "papers"]) }
      : {}),
    because: draw.one(["wanted so", "seen and meant: leave it", 12]),
  }));
}

const FORMATS = {
  in: ["us-a2", "us-a7", "us-a6", "us-a1", "us-slimline", "sq-5", "mini-slim-3x6"],
  mm: ["card-iso-a6", "iso-a5", "iso-dl", "sq-145mm", "card-a4-quarter"],
} as const;

function randomCard(room: Room, index: number): FileValue {
  const { draw, papers } = room;
  const inch = draw.unit === "in" ? 16 : 50;
  const format = draw.one(FORMATS[draw.unit]);
  const stand = draw.one(["upright", "lying"] as const);
  let front: Size;
  let size: { readonly [key: string]: FileValue };
  if (draw.sometimes(70)) {
    const card = findNamedSize(format, "card");
    if (card === undefined) throw new Error(`No card is called ${format}.`);
    ({ front } = formatFront(card, stand));
    size = { format, ...(stand === "lying" || draw.sometimes(20) ? { stand } : {}) };
  } else {
    const width = draw.whole(2 * inch, 6 * inch);
    const height = draw.sometimes(20) ? width : draw.whole(2 * inch, 6 * inch);
    front = { width: width * draw.step, height: height * draw.step };
    size = { size: draw.size(width, height) };
  }
  const surface = { ...front, isMat: false };
  return {
    name: `${draw.one(["Rooftops", "Lanterns", "Moth", "Comet"])} ${index + 1}`,
    ...size,
    ...randomFold(room),
    base: papers.base(),
    ...(draw.sometimes(50) ? { copies: randomCopies(room) } : {}),
    ...(draw.sometimes(90) ? { front: randomLayers(room, surface, 0) } : {}),
    ...randomFinish(draw),
  };
}

/** A fold, with the leaves that go with it. Of its border an insert keeps most of the card. */
function randomFold({ draw, papers }: Room): FileObject {
  if (draw.sometimes(8)) {
    return { fold: "easel", ...(draw.sometimes(50) ? { "front-paper": papers.choice() } : {}) };
  }
  const fold: FileObject = draw.sometimes(40) ? { fold: draw.one(["side", "top", "either"]) } : {};
  if (!draw.sometimes(12)) return fold;
  const border: FileObject = draw.sometimes(50) ? { border: draw.length(draw.whole(0, 8)) } : {};
  const grain: FileObject = draw.sometimes(20) ? { grain: "ignore" } : {};
  return { ...fold, insert: { paper: papers.choice(), ...border, ...grain } };
}

interface Surface extends Size {
  readonly isMat: boolean;
}

/** A layer, what it is as a carrier, and whether what follows in its list lies on it. */
interface Laid {
  readonly entry: FileObject;
  readonly surface: Surface;
  readonly carries: boolean;
}

const NESTED_AT_MOST = 3;

function randomLayers(room: Room, carrier: Surface, depth: number): readonly FileValue[] {
  const { draw } = room;
  const list: FileValue[] = [];
  let below = carrier;
  let strips = 0;
  // Where something lies on the carrier already, it might lie on the border of what comes next, so that has none.
  let isFree = true;
  const count = draw.whole(1, room.most);
  for (let index = 0; index < count; index += 1) {
    // Where hardly any room is left the list ends: the border of the trade alone takes 1/4 in or 6 mm.
    const least = (draw.unit === "in" ? 12 : 24) * draw.step;
    if (Math.min(below.width, below.height) < least) break;
    const kind = draw.one(["mat", "mat", "panel", "bands", "bands", "strip", "sentiment"] as const);
    if (kind === "strip") {
      const laid = randomStrip(room, below, strips);
      if (laid === null) break;
      if (depth < NESTED_AT_MOST && draw.sometimes(15)) return [...list, withLayers(room, laid, depth)];
      list.push(laid.entry);
      strips += laid.surface.height;
      isFree = false;
      continue;
    }
    if (kind === "sentiment") {
      const { laid, hasMats } = randomSentiment(room, below);
      if (depth < NESTED_AT_MOST && draw.sometimes(15)) return [...list, withLayers(room, laid, depth)];
      list.push(laid.entry);
      if (hasMats) return list;
      isFree = false;
      continue;
    }
    const laid = randomCarrier(room, below, kind, isFree);
    if (depth < NESTED_AT_MOST && draw.sometimes(20)) return [...list, withLayers(room, laid, depth)];
    list.push(laid.entry);
    isFree = laid.carries;
    if (laid.carries) {
      below = laid.surface;
      strips = 0;
    }
  }
  return list;
}

function withLayers(room: Room, { entry, surface }: Laid, depth: number): FileValue {
  return { ...entry, layers: randomLayers(room, surface, depth + 1) };
}

function randomCarrier(room: Room, carrier: Surface, kind: "mat" | "panel" | "bands", isFree: boolean): Laid {
  const bySize = !isFree || room.draw.sometimes(25);
  const { keys, size } = bySize ? randomSize(room, carrier) : randomBorder(room.draw, carrier);
  const surface = { ...size, isMat: kind === "mat" };
  if (kind === "panel" && bySize && room.draw.sometimes(60)) {
    const entry = randomShapeLayer(room, size, keys);
    // What lies on it would have to keep within its outline.
    if (entry !== null) return { entry, surface: { width: 1, height: 1, isMat: false }, carries: false };
  }
  if (kind === "panel" && bySize && room.draw.sometimes(50))
    return { entry: randomDieCut(room, keys), surface: { ...size, isMat: false }, carries: false };
  // Where there is no room for bands, a panel takes their place.
  const own =
    kind === "bands" ? (randomBands(room, size) ?? randomPaper(room, "panel")) : randomPaper(room, kind);
  const join = randomJoin(room, own, size);
  return { entry: { ...own, ...keys, ...join }, surface, carries: kind === "mat" || !bySize };
}

function randomFoam(draw: Draw): FileObject {
  return draw.sometimes(10) ? { foam: draw.one(["1/32 in", "1/16 in", "1/8 in", "2 mm"]) } : {};
}

/** A paper, with a name of its own and a wish for the grain now and then. */
function randomPaper({ draw, papers }: Room, kind: string): FileObject {
  const named = {
    ...(draw.sometimes(15) ? { name: draw.one(["window", "moon", "cloud bank"]) } : {}),
    ...randomFoam(draw),
  };
  if (!draw.sometimes(20)) return { [kind]: papers.choice(), ...named };
  const along = draw.one(["upright", "across"]);
  if (papers.steady !== null && draw.sometimes(30)) {
    return { [kind]: papers.steady, ...named, grain: { along, need: "require" } };
  }
  return { [kind]: papers.choice(), ...named, grain: draw.sometimes(50) ? along : { along, need: "prefer" } };
}

function randomBorder(draw: Draw, carrier: Surface): { readonly keys: FileObject; readonly size: Size } {
  const { step } = draw;
  const least = carrier.isMat ? 1 : 0;
  const most = Math.floor(Math.min(carrier.width, carrier.height) / (4 * step));
  const some = () => draw.whole(least, Math.min(most, draw.one([2, 4, most])));
  const inset = (border: FileValue, left: Ticks, right: Ticks, top: Ticks, bottom: Ticks) => ({
    keys: { border },
    size: { width: carrier.width - left - right, height: carrier.height - top - bottom },
  });
  const way = draw.whole(0, 9);
  if (way === 0) {
    const border = draw.unit === "in" ? inches(1 / 8) : millimetres(3);
    const { size } = inset(0, border, border, border, border);
    return { keys: {}, size };
  }
  if (way === 1) {
    const total = some();
    const half = (total * step) / 2;
    return inset({ total: draw.length(total) }, half, half, half, half);
  }
  if (way === 2) {
    const [sides, top] = [some(), some()];
    const border = { sides: draw.length(sides), top: draw.length(top) };
    return inset(border, sides * step, sides * step, top * step, sides * step);
  }
  if (way === 3) {
    const [left, right, top, bottom] = [some(), some(), some(), some()];
    const border = {
      left: draw.length(left),
      right: draw.length(right),
      top: draw.length(top),
      bottom: draw.length(bottom),
    };
    return inset(border, left * step, right * step, top * step, bottom * step);
  }
  if (way === 4) {
    // A length in the other unit lies between the steps.
    const [text, ticks] = draw.unit === "in" ? ["3 mm", millimetres(3)] : ["1/16 in", inches(1 / 16)];
    return inset(text, ticks, ticks, ticks, ticks);
  }
  const border = some();
  return inset(draw.length(border), border * step, border * step, border * step, border * step);
}

function randomSize(room: Room, carrier: Surface): { readonly keys: FileObject; readonly size: Size } {
  const { draw } = room;
  const spare = carrier.isMat ? 2 : 0;
  const width = draw.whole(4, Math.floor(carrier.width / draw.step) - spare);
  const height = draw.whole(4, Math.floor(carrier.height / draw.step));
  const size = { width: width * draw.step, height: height * draw.step };
  return { keys: { size: draw.size(width, height), ...randomPlace(room, size, carrier) }, size };
}

/** Where something of a size lies, inside its carrier, off the left edge of a mat. */
function randomPlace(
  room: Room,
  size: Size,
  carrier: Surface,
  axes: "x" | "y" | "both" = "both",
): FileObject {
  const { draw } = room;
  const keys: Record<string, FileValue> = {};
  const lines: string[] = [];
  for (const axis of ["x", "y"] as const) {
    if (axes !== "both" && axes !== axis) continue;
    const side = axis === "x" ? "width" : "height";
    const free = Math.floor((carrier[side] - size[side]) / draw.step);
    const off = axis === "x" && carrier.isMat ? 1 : 0;
    const [start, end, first, second] =
      axis === "x"
        ? ["left", "right", "left third", "right third"]
        : ["top", "bottom", "upper third", "lower third"];
    const way = draw.whole(0, 3);
    if (way === 1 && free >= off) keys[start as string] = draw.length(draw.whole(off, free));
    if (way === 2 && free >= off) keys[end as string] = draw.length(draw.whole(0, free - off));
    // The middle is at least a third less half the precision from either edge; a tick more is for odd sizes.
    const reach = 2 * Math.floor(carrier[side] / 3) - room.precision - 2 - 2 * off * draw.step;
    if (way === 3 && size[side] <= reach) lines.push(draw.one([first as string, second as string]));
  }
  if (lines.length > 0) keys.line = lines.length === 1 && draw.sometimes(70) ? (lines[0] as string) : lines;
  return keys;
}

function randomStrip(room: Room, carrier: Surface, taken: Ticks): Laid | null {
  const { draw } = room;
  const upright = !carrier.isMat && draw.sometimes(40);
  const [along, across] = upright ? (["height", "width"] as const) : (["width", "height"] as const);
  const most = Math.floor((carrier[across] - (carrier.isMat ? taken + draw.step : 0)) / draw.step);
  if (most < 2) return null;
  const width = draw.whole(2, Math.min(most, 24));
  const length = draw.sometimes(30) ? draw.whole(4, Math.floor(carrier[along] / draw.step)) : null;
  const reach = length === null ? carrier[along] : length * draw.step;
  const size = upright
    ? { width: width * draw.step, height: reach }
    : { width: reach, height: width * draw.step };
  const loose = { ...carrier, isMat: false };
  const place = randomPlace(room, size, loose, length !== null ? "both" : upright ? "x" : "y");
  const entry = {
    ...randomPaper(room, "strip"),
    width: draw.length(width),
    ...(upright || draw.sometimes(20) ? { runs: upright ? "upright" : "across" } : {}),
    ...(length === null ? {} : { length: draw.length(length) }),
    ...place,
  };
  return { entry, surface: { ...size, isMat: false }, carries: false };
}

function randomSentiment(room: Room, carrier: Surface): { readonly laid: Laid; readonly hasMats: boolean } {
  const { draw, papers } = room;
  const borders = Array.from({ length: draw.one([0, 0, 1, 1, 2]) }, () => draw.whole(1, 2));
  const around = 2 * borders.reduce((sum, border) => sum + border, 0);
  const spare = carrier.isMat ? 2 : 0;
  const left = (side: "width" | "height") => Math.floor(carrier[side] / draw.step) - spare - around;
  // With a carrier of 12 steps there are 2 left for the words: 12 - 2 - 8.
  const width = draw.whole(2, Math.min(left("width"), 48));
  const height = draw.whole(2, Math.min(left("height"), 16));
  const outer = { width: (width + around) * draw.step, height: (height + around) * draw.step };
  const entry = {
    ...randomPaper(room, "sentiment"),
    size: draw.size(width, height),
    ...(draw.sometimes(70)
      ? { text: draw.one(["Good night", "Warm wishes", 'For "you": <always> & more']) }
      : {}),
    ...randomPlace(room, outer, carrier),
    ...(borders.length > 0
      ? { mats: borders.map((border) => ({ mat: papers.choice(), border: draw.length(border) })) }
      : {}),
  };
  const surface = { width: width * draw.step, height: height * draw.step, isMat: false };
  return { laid: { entry, surface, carries: false }, hasMats: borders.length > 0 };
}
