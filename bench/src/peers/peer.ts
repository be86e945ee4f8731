/** The general-purpose packers that stand beside us. None of them is made for edge-to-edge cuts. */
import type { Size } from "@sheetwright/packing";
import { checkPlaced } from "./check-placed.js";
import { type SquareTry, tryBinPack, tryPotpack } from "./pack-in-square.js";
import { type SheetsTry, tryMaxRects, tryShelfPack } from "./pack-on-sheets.js";

/** Peers that fill sheets of one size. */
export const SHEET_PEERS = ["maxrects-packer", "@mapbox/shelf-pack"] as const;
/** Peers that have no sheet. */
export const SQUARE_PEERS = ["potpack", "bin-pack"] as const;
export type Peer = (typeof SHEET_PEERS)[number] | (typeof SQUARE_PEERS)[number];

/** What a peer made of pieces, its best try. */
export interface PeerAnswer {
  readonly sheets: number;
  /** Area of the sheets used, or of the bounding square. */
  readonly sheetArea: number;
  /** Sheets by each try; empty where there is only one. */
  readonly tries: Readonly<Record<string, number>>;
  readonly faults: readonly string[];
}

/** Whether a peer can turn pieces. */
export function canTurn(peer: Peer): boolean {
  return peer === "maxrects-packer";
}

/** Has a peer pack pieces; every try is checked, and the one with the fewest sheets counts. */
export function askPeer(
  peer: Peer,
  sheet: Size,
  pieces: readonly Size[],
  mayTurn: boolean,
  timed: <Result>(work: () => Result) => Result,
): PeerAnswer {
  switch (peer) {
    case "maxrects-packer":
      return bestOf(
        timed(() => tryMaxRects(sheet, pieces, mayTurn)),
        sheet,
        pieces,
        mayTurn,
      );
    case "@mapbox/shelf-pack":
      return bestOf(
        timed(() => tryShelfPack(sheet, pieces)),
        sheet,
        pieces,
        false,
      );
    case "potpack":
      return squared(
        timed(() => tryPotpack(pieces)),
        pieces,
      );
    case "bin-pack":
      return squared(
        timed(() => tryBinPack(pieces)),
        pieces,
      );
  }
}

function bestOf(
  tries: readonly SheetsTry[],
  sheet: Size,
  pieces: readonly Size[],
  mayTurn: boolean,
): PeerAnswer {
  const sheets = Math.min(...tries.map((each) => each.sheets));
  return {
    sheets,
    sheetArea: sheets * sheet.width * sheet.height,
    tries: Object.fromEntries(tries.map((each) => [each.name, each.sheets])),
    faults: tries.flatMap(({ name, placed }) =>
      checkPlaced(pieces, placed, sheet, mayTurn).map((fault) => `${name}: ${fault}`),
    ),
  };
}

function squared({ width, height, placed }: SquareTry, pieces: readonly Size[]): PeerAnswer {
  const side = Math.max(width, height);
  return {
    sheets: 1,
    sheetArea: side * side,
    tries: {},
    faults: checkPlaced(pieces, placed, { width, height }, false),
  };
}
