import { Command, CommanderError } from "commander";
import { bonusCommand } from "./bonus/bonus-command.js";
import { addBonusOptions, BONUS_OPTIONS } from "./bonus/bonus-options.js";
import { checkCommand } from "./check/check-command.js";
import { addCheckOptions } from "./check/check-request.js";
import { compareCommand } from "./compare/compare-command.js";
import { addCompareOptions, COMPARE_OPTIONS } from "./compare/compare-options.js";
import { type Fault, FaultsFound, type FaultyCommand, quote, writeFaults } from "./fault.js";
import type { Io } from "./io.js";
import { needCommand } from "./need/need-command.js";
import { addNeedOptions, NEED_OPTIONS } from "./need/need-options.js";
import { planCommand } from "./plan/plan-command.js";
import { priceCommand } from "./price/price-command.js";
import { addPriceOptions, PRICE_OPTIONS } from "./price/price-options.js";
import { projectPlanCommand } from "./project-plan/project-plan-command.js";
import { addPlanOptions, PLAN_OPTIONS, type WrittenOptions } from "./request/plan-options.js";
import { asksForList } from "./request/project-plan-request.js";
import { savingsCommand } from "./savings/savings-command.js";
import { addSavingsOptions, SAVINGS_OPTIONS } from "./savings/savings-options.js";
import { howManyCommand } from "./sets/how-many-command.js";
import { addHowManyOptions, HOW_MANY_OPTIONS } from "./sets/how-many-options.js";
import { shapeCommand } from "./shape/shape-command.js";
import { addShapeOptions, SHAPE_OPTIONS } from "./shape/shape-options.js";
import { newCommand } from "./starter/new-command.js";
import { stockCommand } from "./stock/stock-command.js";
import { addStockOptions, STOCK_OPTIONS } from "./stock/stock-options.js";
import { VERSION } from "./version.js";
import { listed } from "./words/listed.js";

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
  const program = describeProgram(io, async (command, written, rest) => {
    code = await COMMANDS[command].run(written, rest, io);
  });
  try {
    await program.parseAsync([...argv], { from: "user" });
    return code;
  } catch (error) {
    return explain(error, argv, io);
  }
}

type CommandName =
  | "plan"
  | "need"
  | "how-many"
  | "price"
  | "savings"
  | "bonus"
  | "compare"
  | "stock"
  | "check"
  | "new"
  | "shape";

interface Described {
  readonly description: string;
  readonly usage: string;
  readonly argument: readonly [name: string, description: string];
  readonly help: string;
  /** Whether it writes files. */
  readonly writes: boolean;
  readonly addOptions: (command: Command) => Command;
  readonly run: (written: WrittenOptions, rest: readonly string[], io: Io) => Promise<ExitCode>;
}

const PLAN_HELP = `
A project file says which papers there are and what each card is made of; sheetwright new writes
one to start from. A shelf file that it names holds your own papers, tools and dies for every
project. A list of pieces has a line for each kind of piece; turn is yes where it may be
turned, else no:
  name,width,height,quantity,turn
  base,7,10,12,no
  mat,4 3/4,6 3/4,12,yes
Lengths are written as 8 1/2, 8-1/2 in, 8.5", 3/8, 216 mm or 21.6cm; a bare number is in the units
of the project, or in --unit.

Exit codes: 0 all pieces are planned, and all items are there; 1 not all: the plan for the others is
written, and what is missing is said; 2 wrong usage or input, nothing written.`;

const NEED_HELP = `
Sheets of every paper, and items, are reckoned as many as needed, whatever is on hand; spares that are
wished for are among the copies. What is not on hand is rounded up to packs where the project says pack.

Exit codes: 0 done; 1 a piece fits none of its papers, and is not reckoned; 2 wrong usage or input.`;

const PRICE_HELP = `
Paper, envelopes, extras, ribbons, what is used up and work are added up as far as the project gives
their costs: cost of a paper, an item, an envelope or an extra, pack of a paper or an item, and rates.
Each card bears its share of the sheets by the area of its pieces. A price is the cost times price-factor.

Exit codes: 0 done; 1 a piece fits none of its papers; 2 wrong usage or input.`;

const SAVINGS_HELP = `
Small changes of the project are planned one by one, each with as many sheets as needed: pieces that may
turn, grain let go, other papers, a border one step wider, either fold, fewer spares or samples, no
kerf or trim, sheets of another size. Those that really save are told, the best first. Nothing is
written; what is made of them is up to you.

Exit codes: 0 done; 1 a piece fits none of its papers; 2 wrong usage or input.`;

const HOW_MANY_HELP = `
A set is one of every card, or as many of each as its copies for guests make it; samples and spares are not
reckoned. The number found has a plan, and the number called impossible a proof. What runs out first is
said, what runs out next, and what more of the first would give.

Exit codes: 0 done; 1 not one complete set was found; 2 wrong usage or input.`;

const BONUS_HELP = `
The project is planned, and what is left of the papers on hand, whole sheets and leftovers worth keeping, is
asked for more copies of each card, and for panels of the sizes in a list:
  sheetwright bonus cards.yaml --panels panels.csv
Each answer is for itself. The plan has the effort that is asked for; each answer is a quick search.

Exit codes: 0 done; 1 not every copy of the project is complete; 2 wrong usage or input.`;

const COMPARE_HELP = `
Every paper of a project becomes sheets of the size, as many as needed, with its pattern, grain and trim;
a list of pieces is that of one copy. Waste is what becomes no piece; what is worth keeping of it
is told beside it. For one plan in full: sheetwright plan.
  sheetwright compare cards.yaml --sizes us-letter,iso-a4,12x12in --copies 1-50 --out sizes.svg
  sheetwright compare --pieces pieces.csv --sizes us-letter=0.35,12x12in=0.60 --copies 12

Exit codes: 0 done; 1 no size gives every piece; 2 wrong usage or input, nothing written.`;

const STOCK_HELP = `
A stock file says of each paper how many whole sheets and which offcuts are on hand:
  sheetwright stock add cards.yaml      adds the papers of a project, with its counts and offcuts
  sheetwright plan cards.yaml --stock stock.json --out plan
  sheetwright stock book plan           takes what that plan cuts, and adds what is left
  sheetwright stock undo                takes the last change back
  sheetwright stock show
A plan is booked once, whole or as far as it is cut: --done and --spoiled tell the sheets so far.

Exit codes: 0 done; 2 wrong usage or input, nothing written.`;

const CHECK_HELP = `
Exit codes: 0 the project can be planned, whatever else is found; 1 a piece fits none of its papers;
2 wrong usage or input.`;

const NEW_HELP = `
Exit codes: 0 written; 2 wrong usage, or cards.yaml is there already: nothing written.`;

const SHAPE_HELP = `
A size is that of the whole shape: across the circle round it for circles, polygons and stars, else
width x height:
  sheetwright shape heart --size 3in --out heart.svg
  sheetwright shape star --size 3 --set points=6 --stitched
  sheetwright shape scalloped-circle --size 3in --window circle --window-size 2in --out ring.svg
A file of your own is measured at its size, and can be stitched or grown:
  sheetwright shape bird.svg --grow 1/8 --out bird-shadow.svg

Exit codes: 0 done; 2 wrong usage or input, or the file is there already: nothing written.`;

const COMMANDS: Readonly<Record<CommandName, Described>> = {
  plan: {
    description: "Turns a project of cards, or a list of pieces, into cut sheets.",
    usage:
      "cards.yaml --out plan [options]\n       sheetwright plan --pieces pieces.csv --sheet us-letter --out plan [options]",
    argument: ["[file]", "the project, in YAML or JSON"],
    help: PLAN_HELP,
    writes: true,
    addOptions: addPlanOptions,
    run: (written, rest, io) =>
      asksForList(written, rest) ? planCommand(written, rest, io) : projectPlanCommand(written, rest, io),
  },
  need: {
    description: "Says what a project takes in all: sheets, packs, ribbon and what else is bought.",
    usage: "cards.yaml [options]",
    argument: ["[file]", "the project, in YAML or JSON"],
    help: NEED_HELP,
    writes: false,
    addOptions: addNeedOptions,
    run: needCommand,
  },
  price: {
    description: "Says what the cards of a project cost, a copy and a guest, and what a price would be.",
    usage: "cards.yaml [options]",
    argument: ["[file]", "the project, in YAML or JSON"],
    help: PRICE_HELP,
    writes: false,
    addOptions: addPriceOptions,
    run: priceCommand,
  },
  savings: {
    description: "Says which small changes of a project would save most.",
    usage: "cards.yaml [options]",
    argument: ["[file]", "the project, in YAML or JSON"],
    help: SAVINGS_HELP,
    writes: false,
    addOptions: addSavingsOptions,
    run: savingsCommand,
  },
  "how-many": {
    description:
      "Says how many complete sets of cards the papers and items on hand give, and what runs out first.",
    usage: "cards.yaml [options]",
    argument: ["[file]", "the project, in YAML or JSON"],
    help: HOW_MANY_HELP,
    writes: false,
    addOptions: addHowManyOptions,
    run: howManyCommand,
  },
  bonus: {
    description: "Says what can be made besides, from what the plan of a project leaves.",
    usage: "cards.yaml [--panels panels.csv] [options]",
    argument: ["[file]", "the project, in YAML or JSON"],
    help: BONUS_HELP,
    writes: false,
    addOptions: addBonusOptions,
    run: bonusCommand,
  },
  compare: {
    description:
      "Says how many sheets of several sizes a project or a list of pieces takes, and how much is wasted.",
    usage:
      "cards.yaml --sizes us-letter,12x12in [options]\n       sheetwright compare --pieces pieces.csv --sizes us-letter,12x12in [options]",
    argument: ["[file]", "the project, in YAML or JSON"],
    help: COMPARE_HELP,
    writes: true,
    addOptions: addCompareOptions,
    run: compareCommand,
  },
  stock: {
    description: "Keeps count of the sheets and offcuts on hand, from plan to plan.",
    usage: "show | add cards.yaml | book plan | undo [options]",
    argument: ["[action]", "show, add, book or undo, then the project or the plan's folder"],
    help: STOCK_HELP,
    writes: true,
    addOptions: addStockOptions,
    run: stockCommand,
  },
  check: {
    description: "Reads a project, or a shelf, and says what is wrong or odd in it, without planning.",
    usage: "cards.yaml [options]",
    argument: ["[file]", "the project, in YAML or JSON"],
    help: CHECK_HELP,
    writes: false,
    addOptions: addCheckOptions,
    run: checkCommand,
  },
  shape: {
    description: "Measures a die shape, and writes it as an SVG file at true size; or lists all shapes.",
    usage: "heart --size 3in --out heart.svg [options]\n       sheetwright shape --list [--out shapes.svg]",
    argument: ["[shape]", "the name of the shape, or an SVG file of your own"],
    help: SHAPE_HELP,
    writes: true,
    addOptions: addShapeOptions,
    run: shapeCommand,
  },
  new: {
    description: "Writes a small project to start from, cards.yaml, with comments that explain it.",
    usage: "[folder]",
    argument: ["[folder]", "where it is written (default: here)"],
    help: NEW_HELP,
    writes: true,
    addOptions: (command) => command,
    run: newCommand,
  },
};

const AFTER_HELP = `
Exit codes: 0 done; 1 cannot be planned as asked; 2 wrong usage or input, nothing written.`;

function describeProgram(
  io: Io,
  run: (command: CommandName, written: WrittenOptions, rest: readonly string[]) => Promise<void>,
): Command {
  const settle = (command: Command): Command =>
    command
      .exitOverride()
      .helpOption("--help", "print this help")
      .configureOutput({
        writeOut: (text) => io.stdout.write(text),
        writeErr: (text) => io.stderr.write(text),
        getOutHelpWidth: () => 100,
        getErrHelpWidth: () => 100,
        // Faults are worded in one place, `explain`.
        outputError: () => undefined,
      });
  const program = settle(new Command("sheetwright"))
    .description("Plans how sheets of paper are cut into cards, before the first cut is made.")
    .version(VERSION, "--version", "print the version")
    .helpCommand("help [command]", "print the help of a command")
    .addHelpText("after", AFTER_HELP);
  for (const name of commandNames()) {
    const { description, usage, argument, help, addOptions } = COMMANDS[name];
    // Words that are no known option are let through, so that all faults can be told at once.
    const command = settle(program.command(name))
      .description(description)
      .usage(usage)
      .argument(...argument)
      .allowUnknownOption()
      .allowExcessArguments()
      .addHelpText("after", help)
      .action((_first: unknown, written: WrittenOptions, self: Command) => run(name, written, self.args));
    addOptions(command);
  }
  return program;
}

function commandNames(): readonly CommandName[] {
  return [
    "new",
    "check",
    "plan",
    "need",
    "how-many",
    "price",
    "savings",
    "bonus",
    "compare",
    "stock",
    "shape",
  ];
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
      "Please report it, with this line, the command and the file it was given.\n",
  );
  return 1;
}

function tell(faults: readonly Fault[], argv: readonly string[], io: Io): ExitCode {
  if (argv.includes("--json")) {
    io.stdout.write(`${JSON.stringify({ sheetwright: "faults", version: 1, faults }, null, 2)}\n`);
  }
  io.stderr.write(writeFaults(faults, faultyCommand(argv)));
  return 2;
}

function faultyCommand(argv: readonly string[]): FaultyCommand {
  const name = commandNames().find((one) => one === argv[0]);
  if (name === undefined) return { name: "sheetwright", writes: true };
  return { name: `sheetwright ${name}`, writes: COMMANDS[name].writes };
}

/** What commander finds before a command runs: an unknown command or option, or an option without its value. */
function usageFault({ code, message }: CommanderError): Fault {
  const found = message.replace(/^error: /, "");
  const quoted = /'([^']*)'/.exec(found)?.[1] ?? "";
  if (code === "commander.optionMissingArgument") {
    const option = quoted.split(" ")[0] ?? quoted;
    const example = [
      PLAN_OPTIONS,
      SHAPE_OPTIONS,
      COMPARE_OPTIONS,
      NEED_OPTIONS,
      HOW_MANY_OPTIONS,
      PRICE_OPTIONS,
      SAVINGS_OPTIONS,
      BONUS_OPTIONS,
      STOCK_OPTIONS,
    ]
      .flatMap((table) => Object.values(table))
      .find(({ flags }) => flags === quoted);
    const such =
      example !== undefined && "example" in example ? `, such as ${option} ${example.example}` : "";
    return {
      code: "option-missing",
      place: { option },
      message: `its value is missing. Give ${quoted}${such}.`,
    };
  }
  if (code === "commander.unknownCommand") {
    const message = `${quote(quoted)} is not a command. The commands are ${listed(commandNames())}; sheetwright --help tells more.`;
    return { code: "unknown-command", place: { option: "sheetwright" }, message };
  }
  return { code: "usage", place: { option: "sheetwright" }, message: `${found.replace(/\s*\n\s*/g, " ")}.` };
}
