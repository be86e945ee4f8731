import { askPeer } from "../peers/peer.js";
import type { PeerTask, Solved } from "./solve-task.js";

/** Has another packer solve an instance; the time is that of all its tries, without the check. */
export function packByPeer({ solver, sheet, pieces, mayTurn }: PeerTask, now: () => number): Solved {
  let seconds = 0;
  const answer = askPeer(solver, sheet, pieces, mayTurn, (work) => {
    const began = now();
    const result = work();
    seconds += now() - began;
    return result;
  });
  return {
    sheets: answer.sheets,
    sheetArea: answer.sheetArea,
    pieceArea: pieces.reduce((sum, { width, height }) => sum + width * height, 0),
    value: null,
    bounds: { sheets: null, sheetArea: null, value: null },
    proven: false,
    work: null,
    steps: null,
    seconds,
    tries: answer.tries,
    faults: answer.faults,
  };
}
