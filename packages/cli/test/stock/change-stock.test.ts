import { spawn } from "node:child_process";
import { lstat, mkdir, mkdtemp, readdir, readFile, rm, symlink } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { nodeFiles } from "../../src/node-files.js";
import { changeStock, undoStockChange } from "../../src/stock/change-stock.js";
import { nodeHolder } from "../../src/stock/node-holder.js";
import type { StockData } from "../../src/stock/stock-data.js";

let folder = "";
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "sheetwright-stock-"));
});
afterEach(() => rm(folder, { recursive: true }));

const silent = { write: () => true };
const io = () => ({
  stdout: silent,
  stderr: silent,
  env: {},
  cwd: folder,
  files: nodeFiles,
  holder: nodeHolder(),
});
const more = (stock: StockData | null): StockData =>
  stock === null ? { revision: 0, units: "in", papers: [], booked: [] } : { ...stock, units: "mm" };

describe("a stock file on this machine", () => {
  it("is made, changed and taken back, and nothing stays beside it but what came before", async () => {
    await changeStock("stock.json", more, io());
    const first = await readFile(join(folder, "stock.json"));
    expect((await changeStock("stock.json", more, io())).revision).toBe(2);
    expect((await readdir(folder)).sort()).toEqual(["stock.json", "stock.json.before-1"]);
    await undoStockChange("stock.json", false, io());
    expect(await readFile(join(folder, "stock.json"))).toEqual(first);
    expect(await readdir(folder)).toEqual(["stock.json"]);
  });

  it("may be a link, which stays one", async () => {
    await mkdir(join(folder, "shared"));
    await changeStock("shared/stock.json", more, io());
    await symlink(join("shared", "stock.json"), join(folder, "stock.json"));
    expect((await changeStock("stock.json", more, io())).revision).toBe(2);
    expect((await lstat(join(folder, "stock.json"))).isSymbolicLink()).toBe(true);
    expect((await readdir(join(folder, "shared"))).sort()).toEqual(["stock.json", "stock.json.before-1"]);
  });

  it("is not written by a run that cannot be told from others", async () => {
    const { holder: _, ...nobody } = io();
    await expect(changeStock("stock.json", more, nobody)).rejects.toThrow(RangeError);
    expect(await readdir(folder)).toEqual([]);
  });
});

describe("this process", () => {
  it("runs, and one that has ended does not", async () => {
    const { isRunning, process: own, mark } = nodeHolder();
    expect(isRunning(own)).toBe(true);
    expect(nodeHolder().mark).not.toBe(mark);
    const other = spawn(process.execPath, ["-e", ""], { stdio: "ignore" });
    await new Promise((done) => other.on("close", done));
    expect(isRunning(other.pid ?? 0)).toBe(false);
  });
});
