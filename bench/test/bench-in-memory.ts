import type { BenchIo } from "../src/bench-io.js";
import { type ExitCode, runBench } from "../src/run-bench.js";
import { runScaleTask } from "../src/scale/scale-task.js";
import { solveTask } from "../src/solve/solve-task.js";

interface Ended {
  readonly code: ExitCode;
  readonly stdout: string;
  readonly stderr: string;
  readonly files: ReadonlyMap<string, string>;
}

/**
 * Runs the bench on files held in memory, started in the folder `/place`, without worker threads; `slowness` is how far the
 * clock goes on at each look.
 */
export async function bench(
  line: string,
  given: Readonly<Record<string, string>> = {},
  slowness = 0.25,
  standIns: Partial<BenchIo> = {},
): Promise<Ended> {
  const files = new Map(Object.entries(given));
  const folders = new Set(["/", "/place"]);
  for (const path of files.keys()) {
    for (let end = path.lastIndexOf("/"); end > 0; end = path.lastIndexOf("/", end - 1))
      folders.add(path.slice(0, end));
  }
  const said = { stdout: "", stderr: "" };
  let clock = 0;
  const now = (): number => (clock += slowness);
  const fail = (code: string, errno: number): never => {
    throw Object.assign(new Error(code), { code, errno });
  };
  const io: BenchIo = {
    stdout: { write: (text) => (said.stdout += text) },
    stderr: { write: (text) => (said.stderr += text) },
    cwd: "/place",
    results: "/place/results",
    machine: { node: "20.19.0", platform: "linux x64", cpu: "abacus", cores: slowness },
    now,
    read: (path) => new TextEncoder().encode(files.get(path) ?? fail("ENOENT", -2)),
    list: (path) =>
      [...files.keys()].flatMap((file) => {
        const rest = file.startsWith(`${path}/`) ? file.slice(path.length + 1) : "/";
        return rest.includes("/") ? [] : [rest];
      }),
    write: (path, text) => files.set(path, text),
    makeFolder: (path) => (files.has(path) ? fail("EEXIST", -17) : folders.add(path)),
    look: (path) => (folders.has(path) ? "folder" : files.has(path) ? "file" : "nothing"),
    openPool: () => ({
      run: (task) => Promise.resolve(solveTask(task, now)),
      close: () => Promise.resolve(),
    }),
    runAlone: (task) => Promise.resolve(runScaleTask(task, now, () => 64)),
    ...standIns,
  };
  const code = await runBench(line.split(" ").filter(Boolean), io);
  return { code, ...said, files };
}
