import { describe, expect, it } from "vitest";
import { memoryFiles } from "../memory-files.js";
import { type Ended, runIn } from "../run-in.js";

/** Two cards with bare seams, a paper that nobody uses, and silences. */
const project = (silence = "") => `sheetwright: 1
title: Two cards
papers:
  night: { cardstock: us-letter, grain: long, count: 6 }
  ember: { cardstock: us-letter }
cards:
  - { name: Rooftops, size: 4 x 5, base: night, front: [{ bands: [1, 1], papers: [night, night], border: 1/8 }] }
  - { name: Moth, size: 4 x 5, base: night, front: [{ bands: [1, 1], papers: [night, night], border: 1/8 }] }
${silence}`;

const SILENCE = `silence:
  - { check: bare-seam, at: Moth, because: its edges are deckled }
  - { check: unused-paper, because: "ember is for spring" }
`;

function check(text: string, ...options: readonly string[]): Promise<Ended> {
  return runIn(["check", "cards.yaml", ...options], { files: memoryFiles({ "/desk/cards.yaml": text }) });
}

const BARE =
  "Warning: The seam 2 3/8 in from the top of these bands will show. Cover it with a strip, or write `seam: bare` if it is " +
  "to be seen. (bare-seam)";
const UNUSED =
  "cards.yaml:5:3 papers.ember: Note: No card uses ember. Leave it out, or name it in a card. (unused-paper)";

describe("sheetwright check", () => {
  it("lists what it finds by severity and place, each with its code, and counts it", async () => {
    const { code, stdout, stderr } = await check(project());
    expect(code).toBe(0);
    expect(stdout).toMatch(/\n2 cards of 6 pieces in all; 2 warnings and 1 note\.\n$/);
    expect(stderr).toBe(
      `\ncards.yaml:7:57 cards[0].front[0]: ${BARE}\ncards.yaml:8:53 cards[1].front[0]: ${BARE}\n${UNUSED}\n`,
    );
  });

  it("leaves out what the project silences, and counts it", async () => {
    const { code, stdout, stderr } = await check(project(SILENCE));
    expect(code).toBe(0);
    expect(stdout).toMatch(/; 1 warning; 2 silenced\.\n$/);
    expect(stderr).toBe(`\ncards.yaml:7:57 cards[0].front[0]: ${BARE}\n`);
    const all = await check(project(`${SILENCE}  - { check: bare-seam, because: both }\n`));
    expect(all.stdout).toMatch(/; nothing odd was found; 3 silenced\.\n$/);
    expect(all.stderr).toBe("");
  });

  it("lists what is silenced with its reasons where it is asked to", async () => {
    const { code, stdout, stderr } = await check(project(SILENCE), "--silenced");
    expect(code).toBe(0);
    expect(stdout).toBe((await check(project(SILENCE))).stdout);
    expect(stderr.split("\n").slice(2)).toEqual([
      `cards.yaml:8:53 cards[1].front[0]: ${BARE.replace("Warning", "Silenced warning")} Because: its edges are deckled`,
      `${UNUSED.replace("Note", "Silenced note")} Because: ember is for spring`,
      "",
    ]);
  });

  it("tells of a silence that silences nothing, where it stands", async () => {
    const { stderr } = await check(project("silence: [{ check: hidden-layer, because: wanted so }]\n"));
    expect(stderr).toContain(
      "\ncards.yaml:9:11 silence[0]: Note: Nothing is silenced here: hidden-layer finds nothing. Leave this silence out. " +
        "(silence-unused)\n",
    );
  });

  it("prints all of it as data with --json, the silenced ones with their reasons", async () => {
    const { stdout, stderr } = await check(project(SILENCE), "--json");
    const { findings } = JSON.parse(stdout);
    expect(findings).toMatchObject([
      { code: "bare-seam", severity: "warning", path: "cards[0].front[0]", silenced: null },
      {
        code: "bare-seam",
        severity: "warning",
        path: "cards[1].front[0]",
        silenced: "its edges are deckled",
      },
      { code: "unused-paper", severity: "note", path: "papers.ember", silenced: "ember is for spring" },
    ]);
    expect(findings[0].place).toEqual({ file: "cards.yaml", line: 7, column: 57, path: "cards[0].front[0]" });
    expect(stderr).toContain("Two cards\n");
  });

  it("ends with 1 where an error is left, which nobody can silence", async () => {
    const tiny = project().replace("ember: { cardstock: us-letter }", "ember: { paper: 2 x 2 }");
    const { code, stdout, stderr } = await check(
      tiny.replace("papers: [night, night]", "papers: [ember, night]"),
    );
    expect(code).toBe(1);
    expect(stdout).toMatch(/; 1 error and 2 warnings\.\n$/);
    expect(stderr).toMatch(
      /^\ncards\.yaml:7:57 cards\[0\]\.front\[0\]: Error: The 1b band is .* \(no-paper\)\n/,
    );
    expect(stderr).toMatch(/\n\nCannot be planned as asked: a piece fits none of its papers\.\n$/);
  });
});

describe("sheetwright plan", () => {
  it("says the warnings and notes that are not silenced", async () => {
    const files = memoryFiles({ "/desk/cards.yaml": project(SILENCE) });
    const { code, stderr } = await runIn(["plan", "cards.yaml", "--out", "plan", "--effort", "quick"], {
      files,
    });
    expect({ code, stderr }).toEqual({ code: 0, stderr: `\ncards.yaml:7:57 cards[0].front[0]: ${BARE}\n` });
  });
});
