import type { Holder } from "../src/stock/holder.js";

/** A run by its number on the machine `desk`, whose waits take no time; the processes that run are those told. */
export function testHolder(process = 7, running: readonly number[] = [7]): Holder {
  let waits = 0;
  return {
    host: "desk",
    process,
    mark: `m${process}`,
    isRunning: (number) => running.includes(number),
    wait: () => {
      waits++;
      return waits > 1000 ? Promise.reject(new Error("waited too often")) : Promise.resolve();
    },
  };
}
