import { Command, CommanderError } from "commander";
import { type Fault, FaultsFound, quote, writeFaults } from "./fault.js";
import type { Io } from "./io.js";
import { planCommand } from "./plan/plan-command.js";
import { addPlanOptions, PLAN_OPTIONS, type WrittenOptions } from "./request/plan-options.js";
import { VERSION } from "./version.js";

/** 0 done; 1 cannot be planned as asked; 2 wrong usage or input. */
export type ExitCode = 0 | 1 | 2;

/**
 * Runs the command `sheetwright`. Touches nothing but what `io` holds, and never rejects: whatever goes wrong is said in
 * plain words on standard error.
 *
 * @param argv the words after the command's name.
 */
export async function run(argv: readonly string[], io: Io): Promise<ExitCode> {
  let code: ExitCode = 0;
  const program = describeProgram(io, async (written, rest) => {
    code = await planCommand(written, rest, io);
  });
  try {
    await program.parseAsync([...argv], { from: "user" });
    return code;
  } catch (error) {
    return explain(error, argv, io);
  }
}

const AFTER_HELP = `
Exit codes: 0 done; 1 cannot be planned as asked; 2 wrong usage or input, nothing written.`;

const PLAN_HELP = `
The piece list has a line for each kind of piece; turn is yes where it may be turned, else no:
  name,width,height,quantity,turn
  base,7,10,12,no
  mat,4 3/4,6 3/4,12,yes
Lengths are written as 8 1/2, 8-1/2 in, 8.5", 3/8, 216 mm or 21.6cm; a bare number is in --unit.

Exit codes: 0 all pieces are planned; 1 not all can be: the plan for the others is written, and
what is missing is said; 2 wrong usage or input, nothing written.`;

function describeProgram(
  io: Io,
  plan: (written: WrittenOptions, rest: readonly string[]) => Promise<void>,
): Command {
  const settle = (command: Command): Command =>
    command.exitOverride().configureOutput({
      writeOut: (text) => io.stdout.write(text),
      writeErr: (text) => io.stderr.write(text),
      getOutHelpWidth: () => 100,
      getErrHelpWidth: () => 100,
      // Faults are worded in one place, `explain`.
      outputError: () => undefined,
    });
  const program = settle(new Command("sheetwright"))
    .description("Plans how sheets of paper are cut into pieces, before the first cut is made.")
    .version(VERSION, "--version", "print the version")
    .helpOption("--help", "print this help")
    .helpCommand("help [command]", "print the help of a command")
    .addHelpText("after", AFTER_HELP);
  // Words that are no known option are let through, so that all faults can be told at once.
  settle(program.command("plan"))
    .description("Turns a list of pieces and a sheet size into cut sheets.")
    .usage("--pieces pieces.csv --sheet us-letter --out plan [options]")
    .helpOption("--help", "print this help")
    .allowUnknownOption()
    .allowExcessArguments()
    .addHelpText("after", PLAN_HELP)
    .action((written: WrittenOptions, command: Command) => plan(written, command.args));
  const command = program.commands.find((one) => one.name() === "plan");
  if (command !== undefined) addPlanOptions(command);
  return program;
}

function explain(error: unknown, argv: readonly string[], io: Io): ExitCode {
  if (error instanceof CommanderError) {
    // Help and version are written by now; help that nobody asked for stands in for a missing command.
    if (error.exitCode === 0) return 0;
    if (error.code === "commander.help") return 2;
    return tell([usageFault(error)], argv, io);
  }
  if (error instanceof FaultsFound) return tell(error.faults, argv, io);
  const message = error instanceof Error ? error.message : String(error);
  io.stderr.write(
    `Sheetwright has a fault of its own and wrote nothing: ${message.split("\n")[0]}\n` +
      "Please report it, with this line, the command and the piece list.\n",
  );
  return 1;
}

function tell(faults: readonly Fault[], argv: readonly string[], io: Io): ExitCode {
  if (argv.includes("--json")) {
    io.stdout.write(`${JSON.stringify({ sheetwright: "faults", version: 1, faults }, null, 2)}\n`);
  }
  io.stderr.write(writeFaults(faults));
  return 2;
}

/** What commander finds before a command runs: an unknown command or option, or an option without its value. */
function usageFault({ code, message }: CommanderError): Fault {
  const found = message.replace(/^error: /, "");
  const quoted = /'([^']*)'/.exec(found)?.[1] ?? "";
  if (code === "commander.optionMissingArgument") {
    const option = quoted.split(" ")[0] ?? quoted;
    const example = Object.values(PLAN_OPTIONS).find(({ flags }) => flags === quoted);
    const such =
      example !== undefined && "example" in example ? `, such as ${option} ${example.example}` : "";
    return {
      code: "option-missing",
      place: { option },
      message: `its value is missing. Give ${quoted}${such}.`,
    };
  }
  if (code === "commander.unknownCommand") {
    const message = `${quote(quoted)} is not a command. The command is plan; sheetwright --help tells more.`;
    return { code: "unknown-command", place: { option: "sheetwright" }, message };
  }
  return { code: "usage", place: { option: "sheetwright" }, message: `${found.replace(/\s*\n\s*/g, " ")}.` };
}
