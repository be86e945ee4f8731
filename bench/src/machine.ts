import { arch, availableParallelism, cpus, platform } from "node:os";

/** Where times were measured; names no person, host or path. */
export interface Machine {
  readonly node: string;
  readonly platform: string;
  readonly cpu: string;
  readonly cores: number;
}

/** The machine that runs this. */
export function thisMachine(): Machine {
  return {
    node: process.versions.node,
    platform: `${platform()} ${arch()}`,
    cpu: cpus()[0]?.model.trim() || "unknown",
    cores: availableParallelism(),
  };
}

/** The machine in a line for a table. */
export function writeMachine({ node, platform, cpu, cores }: Machine): string {
  return `Node ${node}, ${platform}, ${cores} ${cores === 1 ? "core" : "cores"} (${cpu})`;
}
