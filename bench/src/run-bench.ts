import { Command, CommanderError } from "commander";
import { alternativesOptions } from "./alternatives/alternatives-options.js";
import { runAlternatives } from "./alternatives/run-alternatives.js";
import { BenchFaults, writeBenchFaults } from "./bench-fault.js";
import type { BenchIo } from "./bench-io.js";
import { packingOptions } from "./packing/packing-options.js";
import { runPacking } from "./packing/run-packing.js";
import { peersOptions, runPeers } from "./peers/run-peers.js";
import { runScale } from "./scale/run-scale.js";
import { scaleOptions } from "./scale/scale-options.js";
import { runShapes } from "./shapes/run-shapes.js";
import { shapesOptions } from "./shapes/shapes-options.js";
import { runWaste } from "./waste/run-waste.js";
import { wasteOptions } from "./waste/waste-options.js";
import type { WrittenOptions } from "./written-options.js";

/** 0 done; 1 something could not be planned, or a plan failed its check; 2 wrong usage or input. */
export type ExitCode = 0 | 1 | 2;

const AFTER_HELP = `
Exit codes: 0 done; 1 something could not be planned, a plan failed its check, or an instance got worse than its
ratchet (results are written); 2 wrong usage or input, nothing measured.`;

/** Runs a suite of the benchmark. Touches nothing but what `io` holds. */
export async function runBench(argv: readonly string[], io: BenchIo): Promise<ExitCode> {
  let code: ExitCode = 0;
  const settle = (command: Command): Command =>
    command
      .exitOverride()
      .configureOutput({
        writeOut: (text) => io.stdout.write(text),
        writeErr: (text) => io.stderr.write(text),
        getOutHelpWidth: () => 100,
        getErrHelpWidth: () => 100,
      })
      .helpOption("--help", "print this help")
      .addHelpText("after", AFTER_HELP);
  const program = settle(new Command("bench"))
    .description("Measures what the packages do, beside plain ways of doing it.")
    .usage("<suite> [options]")
    .helpCommand("help [suite]", "print the help of a suite");
  const waste = settle(program.command("waste"))
    .description(
      "How much paper is wasted: yields of common pieces and plans of mixed pieces, by sheet size.",
    )
    .usage("[--sheet 12x12in] [--pieces FILE] [options]")
    .action((written: WrittenOptions) => {
      code = runWaste(written, io);
    });
  for (const option of wasteOptions()) waste.addOption(option);
  const packing = settle(program.command("packing"))
    .description("How many sheets the published instances take, beside the best that is published.")
    .usage("--data FOLDER [--family NAME] [options]")
    .action(async (written: WrittenOptions) => {
      code = await runPacking(written, io);
    });
  for (const option of packingOptions()) packing.addOption(option);
  const peers = settle(program.command("peers"))
    .description("The same instances by general-purpose packers from npm, beside ours.")
    .usage("--data FOLDER [--family NAME] [options]")
    .action(async (written: WrittenOptions) => {
      code = await runPeers(written, io);
    });
  for (const option of peersOptions()) peers.addOption(option);
  const shapes = settle(program.command("shapes"))
    .description("How long outlines take to flatten, grow and combine, beside other packages.")
    .usage("[--rounds NUMBER] [options]")
    .action((written: WrittenOptions) => {
      code = runShapes(written, io);
    });
  for (const option of shapesOptions()) shapes.addOption(option);
  const scale = settle(program.command("scale"))
    .description("How time and memory grow with the copies and with the kinds of pieces.")
    .usage("[--effort EFFORT] [--grow copies|kinds] [options]")
    .action(async (written: WrittenOptions) => {
      code = await runScale(written, io);
    });
  for (const option of scaleOptions()) scale.addOption(option);
  const alternatives = settle(program.command("alternatives"))
    .description("What projects cost with and without a choice of papers, folds and offcuts.")
    .usage("[--projects FOLDER] [--effort EFFORT] [options]")
    .action((written: WrittenOptions) => {
      code = runAlternatives(written, io);
    });
  for (const option of alternativesOptions()) alternatives.addOption(option);
  try {
    await program.parseAsync([...argv], { from: "user" });
    return code;
  } catch (error) {
    // Help that was asked for has exit code 0; commander has said what it found.
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    if (!(error instanceof BenchFaults)) throw error;
    io.stderr.write(writeBenchFaults(error.faults));
    return 2;
  }
}
