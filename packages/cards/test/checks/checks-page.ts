import { type Check, projectChecks, type Severity } from "../../src/index.js";

const HEADINGS: Readonly<Record<Severity, readonly [heading: string, text: string]>> = {
  error: [
    "Errors",
    "The cards cannot be made as asked. `no-paper` lets the rest be planned (exit code 1); with any other nothing is (exit code 2).",
  ],
  warning: ["Warnings", "Something that may spoil cards. Exit code 0."],
  note: ["Notes", "Good to know. Exit code 0."],
};

/** Writes docs/checks.md: every check, as the registry has it. */
export function checksPage(): string {
  const sections = (["error", "warning", "note"] as const).map((severity) => {
    const [heading, text] = HEADINGS[severity];
    const rows = projectChecks.filter((check) => check.severity === severity).map(writeRow);
    return `## ${heading}\n\n${text}\n\n| code | what | rule | source | what helps |\n|---|---|---|---|---|\n${rows.join("\n")}\n`;
  });
  return `${HEAD}\n${sections.join("\n")}\n${SILENCING}`;
}

function writeRow({ code, title, rule, source, advice }: Check): string {
  return `| \`${code}\` | ${[title, rule, source, advice].map(inCell).join(" | ")} |`;
}

/** What a table cell cannot hold as it stands. */
function inCell(text: string): string {
  return text.replaceAll("|", "\\|");
}

const HEAD = `# What is checked, and why?

\`sheetwright check cards.yaml\` looks a project through by the rules below and lists what it finds: errors, then warnings, then
notes, each in the order of the file. \`sheetwright plan\` says the warnings and notes as well. Behind each stands its code.
This page is written from the rules as the program holds them.
`;

const SILENCING = `## How to silence one

A warning or a note that is known and meant goes into the project file by its code, with the reason:

    silence:
      - { check: bare-seam, at: Rooftops, because: the edges are deckled }
      - { check: unused-paper, because: the rest is for next year }

\`at\` is the name of a card, or a place as a finding names it, such as \`cards[0].front[1]\` or \`papers.ember\`; without it the check
is silenced everywhere. What is silenced is counted by \`sheetwright check\`, listed with \`--silenced\`, and part of \`--json\`. Errors
cannot be silenced. A silence that silences nothing is told (\`silence-unused\`). All keys: [project-file.md](project-file.md).

## For programs

\`checkProject\` gives all findings of a project, \`projectChecks\` the rules:

\`\`\`js
import { checkProject, projectChecks, readProject } from "@sheetwright/cards";

const { project } = readProject(\`
sheetwright: 1
title: One evening
papers:
  night: { cardstock: us-letter, grain: long }
  cream: { cardstock: us-letter }
cards:
  - name: Rooftops
    format: us-a2
    base: night
    front:
      - { bands: [1, 3], papers: [night, night], border: 1/8 }
silence:
  - { check: bare-seam, because: the edges are deckled }
\`);
const found = checkProject(project);
found.map(({ code, severity }) => [code, severity]) // => [["bare-seam", "warning"], ["unused-paper", "note"]]
found.map(({ path, silenced }) => [path, silenced]) // => [["cards[0].front[0]", "the edges are deckled"], ["papers.cream", null]]
projectChecks.find(({ code }) => code === "bare-seam").source // => "common practice, no source"
\`\`\`
`;
