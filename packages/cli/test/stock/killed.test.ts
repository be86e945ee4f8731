import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { readProject } from "@sheetwright/cards";
import { plan, stockOfProject } from "@sheetwright/planner";
import { build } from "esbuild";
import { afterAll, beforeAll, expect, it } from "vitest";
import { isSealed } from "../../src/folder/seal.js";
import type { CutPlan } from "../../src/stock/read-cut-plan.js";
import { readStockText } from "../../src/stock/read-stock-text.js";
import { writeStockText } from "../../src/stock/write-stock-text.js";

const KILLS = 200;
const AT_ONCE = 2;
const SHEETS = 100_000;

// Two pieces from one sheet, and an offcut of 8 1/2 x 3 in from each.
const TEXT = `sheetwright: 1
title: Evening workshop
papers: { night: { cardstock: us-letter, count: ${SHEETS}, grain: long } }
cards: [{ name: Plain, size: 8 1/2 x 8, fold: flat, base: night, copies: 1 }]
`;

const base = mkdtempSync(join(tmpdir(), "sheetwright-stock-"));
const script = join(base, "booking-process.mjs");
const planFile = join(base, "plan.json");
afterAll(() => rmSync(base, { recursive: true, force: true }));

beforeAll(async () => {
  await build({
    entryPoints: [fileURLToPath(new URL("booking-process.ts", import.meta.url))],
    outfile: script,
    bundle: true,
    minify: true,
    platform: "node",
    format: "esm",
    conditions: ["@sheetwright/source"],
    logLevel: "error",
  });
  const { project } = readProject(TEXT);
  if (project === null) throw new Error("The project cannot be read.");
  const found = plan(project, { effort: "quick" });
  const layouts = [{ name: "sheet-night-1", group: 0, layout: 0, run: 1 }];
  const cut: CutPlan = { identity: "", plan: found, project, after: null, layouts };
  writeFileSync(planFile, JSON.stringify(cut));
  const stock = { revision: 1, units: "in", papers: stockOfProject(project), booked: [] } as const;
  writeFileSync(join(base, "stock.json"), writeStockText(stock));
});

interface Booker {
  readonly process: ChildProcess;
  /** What it told that it booked. */
  readonly told: string[];
  readonly ready: Promise<void>;
  readonly ended: Promise<void>;
}

function start(round: number): Booker {
  const process = spawn(globalThis.process.execPath, [script, base, `${round}`, planFile], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  const told: string[] = [];
  let rest = "";
  let say = (): void => undefined;
  const ready = new Promise<void>((done) => {
    say = done;
  });
  process.stdout?.setEncoding("utf8").on("data", (text: string) => {
    const lines = (rest + text).split("\n");
    rest = lines.pop() ?? "";
    told.push(...lines.filter((line) => line !== "ready"));
    if (lines.includes("ready")) say();
  });
  return { process, told, ready, ended: new Promise((done) => process.on("close", () => done())) };
}

/** Whole numbers below a limit, the same each time (the minimal standard generator of Park & Miller 1988). */
function seeded(seed: number): (limit: number) => number {
  let state = seed;
  return (limit) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % limit;
  };
}

it(`is the old or the new file after ${KILLS} kills at random moments of ${AT_ONCE} processes at once, never broken, never booked twice`, async () => {
  const random = seeded(20_260_101);
  let kills = 0;
  let amid = 0;
  const told = new Map<string, number>();
  let revision = 1;
  for (let round = 0; kills < KILLS; round++) {
    const bookers = Array.from({ length: AT_ONCE }, () => start(round));
    await Promise.all(bookers.map(({ ready }) => ready));
    // On a busy machine next to nothing is booked in so little time: most rounds wait for bookings, some kill at once.
    const least = round % 4 === 0 ? 0 : 2;
    const isAlive = () => bookers.every(({ process }) => process.exitCode === null);
    while (bookers.flatMap((booker) => booker.told).length < least && isAlive())
      await new Promise((done) => setTimeout(done, 1));
    for (const { process } of bookers) {
      await new Promise((done) => setTimeout(done, random(25)));
      // The other one goes on while this one dies, and may be amid a change itself.
      process.kill("SIGKILL");
      kills++;
    }
    await Promise.all(bookers.map(({ ended }) => ended));
    for (const identity of bookers.flatMap((booker) => booker.told)) {
      expect(identity).toMatch(/^[0-9a-f]{64}$/);
      told.set(identity, (told.get(identity) ?? 0) + 1);
    }
    if (readdirSync(base).some((name) => /\.(part|lock-.*)$/.test(name))) amid++;

    const text = readFileSync(join(base, "stock.json"), "utf8");
    expect(isSealed(text)).toBe(true);
    const data = readStockText(text, "stock.json");
    if (!("papers" in data)) throw new Error(JSON.stringify(data));
    const [night] = data.papers;
    const { booked } = data;
    // Every booking is there once, took its sheet once and gave its offcut once.
    expect(new Set(booked.map((one) => one.plan)).size).toBe(booked.length);
    expect(night?.sheets).toBe(SHEETS - booked.length);
    expect(night?.offcuts.map(({ count }) => count)).toEqual(booked.length === 0 ? [] : [booked.length]);
    expect(data.revision).toBe(1 + booked.length);
    expect(data.revision).toBeGreaterThanOrEqual(revision);
    revision = data.revision;
    // What was told to be booked is booked, and nobody was told twice.
    for (const [identity, times] of told) {
      expect(times).toBe(1);
      expect(booked.some((one) => one.plan === identity)).toBe(true);
    }
  }
  // The kills met changes, and changes were made.
  expect(amid).toBeGreaterThan(KILLS / AT_ONCE / 10);
  expect(revision).toBeGreaterThan(KILLS / AT_ONCE);
}, 600_000);
