import fc from "fast-check";
import { expect, test } from "vitest";
import { askPeer, canTurn, type Peer, SHEET_PEERS, SQUARE_PEERS } from "../../src/peers/peer.js";
import { inOrder, PIECE_ORDERS } from "../../src/peers/piece-orders.js";

const untimed = <Result>(work: () => Result): Result => work();
const sheet = { width: 20, height: 12 };
const size = fc.record({ width: fc.integer({ min: 1, max: 20 }), height: fc.integer({ min: 1, max: 12 }) });

test("every layout of every packer is right, and no sheet holds more than its area", () => {
  fc.assert(
    fc.property(fc.array(size, { minLength: 1, maxLength: 25 }), (pieces) => {
      const area = pieces.reduce((sum, { width, height }) => sum + width * height, 0);
      for (const peer of [...SHEET_PEERS, ...SQUARE_PEERS] as readonly Peer[]) {
        for (const mayTurn of canTurn(peer) ? [false, true] : [false]) {
          const { faults, sheetArea, tries, sheets } = askPeer(peer, sheet, pieces, mayTurn, untimed);
          expect(faults).toEqual([]);
          expect(sheetArea).toBeGreaterThanOrEqual(area);
          if (Object.keys(tries).length > 0) expect(sheets).toBe(Math.min(...Object.values(tries)));
        }
      }
    }),
  );
});

test("turning lets maxrects-packer use one sheet where fixed pieces take two", () => {
  const pieces = [
    { width: 4, height: 12 },
    { width: 12, height: 4 },
    { width: 12, height: 4 },
    { width: 12, height: 4 },
    { width: 12, height: 4 },
  ];
  const sheets = (mayTurn: boolean) => askPeer("maxrects-packer", sheet, pieces, mayTurn, untimed).sheets;
  expect([sheets(false), sheets(true)]).toEqual([2, 1]);
});

test("the packers without a sheet are measured by a square", () => {
  const pieces = [
    { width: 6, height: 2 },
    { width: 6, height: 2 },
  ];
  for (const peer of SQUARE_PEERS) {
    const { sheetArea, sheets } = askPeer(peer, sheet, pieces, false, untimed);
    expect([sheets, sheetArea]).toEqual([1, 36]);
  }
});

test("pieces come in falling order, equal ones in the order they were given", () => {
  const pieces = [
    { width: 2, height: 6 },
    { width: 5, height: 3 },
    { width: 6, height: 2 },
    { width: 2, height: 6 },
  ];
  const orders = PIECE_ORDERS.map((order) => [order.name, inOrder(pieces, order)]);
  expect(Object.fromEntries(orders)).toEqual({
    area: [1, 2, 0, 3],
    "long side": [2, 0, 3, 1],
    height: [0, 3, 1, 2],
    width: [2, 1, 0, 3],
  });
});
