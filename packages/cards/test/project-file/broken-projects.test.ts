import { describe, expect, it } from "vitest";
import { type ProjectFault, readProject } from "../../src/index.js";
import { SMALLEST } from "./sample-projects.js";

/** A project of two papers and a pad, with room for a card's base and front. */
const project = (card: string, more = "") => `sheetwright: 1
title: A broken project
${more}papers:
  night: { cardstock: us-letter, grain: long }
  plain: { paper: 12 x 12 }
  stars: { pad: 6 x 6, designs: { dots: 6, comets: { count: 6, pattern: one-way } } }
cards:
${card}
`;
const front = (layers: string) =>
  project(`  - name: Broken\n    format: us-a7\n    base: night\n    front:\n${layers}`);
const layer = (text: string) => front(`      - { ${text} }`);
const paper = (text: string) => SMALLEST.replace("cardstock: us-letter", text);
const head = (text: string) => SMALLEST.replace("title: One card", text);

type Case = readonly [
  what: string,
  text: string,
  code: ProjectFault["code"],
  path: string,
  line: number,
  suggestion: string | null,
  words: string,
];

// biome-ignore format: a case a line reads as a table.
const CASES: readonly Case[] = [
  // The text as a whole
  ["an empty file", "", "missing", "", 1, null, "The file holds nothing."],
  ["only a comment", "# later\n", "missing", "", 1, null, "The file holds nothing."],
  ["a list", "- 1\n- 2\n", "wrong-type", "", 1, null, "The file holds a list and no keys."],
  ["a word", "hello\n", "wrong-type", "", 1, null, 'The file holds "hello" and no keys.'],
  ["a bracket that is not closed", head("copies: { guests: 12\ntitle: x"), "not-readable", "", 3, null, "its closing } is missing"],
  ["a colour without quotes", paper("cardstock: us-letter, colour: #22304f"), "not-readable", "", 4, null, "A # after a space begins a comment"],
  ["a colon in a text", head("title: Night: a workshop"), "not-readable", "", 2, null, 'Put the text in quotes, such as text: "Good night: sleep well".'],
  ["an indentation by a tab", head("title: x\ncopies:\n\tguests: 3"), "not-readable", "", 4, null, "YAML takes spaces only."],
  ["a line that stands too far out", SMALLEST.replace("    format", "   format"), "not-readable", "", 7, null, "The indentation does not fit"],
  ["a quote that is not closed", head('title: "One card'), "not-readable", "", 2, null, "A quote mark is opened here and never closed."],
  ["an inch mark in double quotes", project('  - { name: A, size: "5" x 7"", base: night }'), "not-readable", "", 8, null, "An inch mark inside double quotes ends them"],
  ["a second document", `${SMALLEST}---\n${SMALLEST}`, "not-readable", "", 9, null, "A second document begins here."],
  ["an alias", head("title: &t One card\ncopies: *t"), "not-readable", "copies", 3, null, "An alias (a word after *) is not read."],
  ["a tag", head("title: !!str 12"), "not-readable", "title", 2, null, "The tag !!str is not read."],
  ["a merge key", project("  - { <<: { name: A }, format: us-a2, base: night }"), "not-readable", 'cards[0]["<<"]', 8, null, "The merge key << is not read."],
  ["a list as a key", head("title: x\n? [a]\n: b"), "not-readable", "", 3, null, "A key must be a plain word."],
  ["a key twice", head("title: One\ntitle: Two"), "twice", "title", 3, null, "is here already, in line 2."],
  ["JSON without a comma", '{ "sheetwright": 1\n"title": "x" }', "not-readable", "", 1, null, "A comma, a colon, a quote mark or a bracket is missing"],

  // Version and project
  ["no version", SMALLEST.replace("sheetwright: 1\n", ""), "version", "sheetwright", 1, "1", "Begin the file with sheetwright: 1."],
  ["a version in quotes", SMALLEST.replace("wright: 1", 'wright: "1"'), "version", "sheetwright", 1, "1", 'Found "1" as the version'],
  ["a later version", SMALLEST.replace("wright: 1", "wright: 2"), "version", "sheetwright", 1, "1", "Use a newer Sheetwright"],
  ["an empty version", SMALLEST.replace("wright: 1", "wright:"), "version", "sheetwright", 1, "1", "Found nothing as the version"],
  ["no title", head("units: in"), "missing", "title", 1, null, 'The key "title" is missing.'],
  ["a misspelt title", head("titel: One card"), "unknown-key", "titel", 2, "title", '"titel" is not a key of a project. Did you mean title?'],
  ["a title of spaces", head("title: '  '"), "missing", "title", 2, null, "The text is empty."],
  ["a very long title", head(`title: ${"x".repeat(5000)}`), "too-many", "title", 2, null, "The text has 5,000 characters, and 120 are the most."],
  ["a control character", head('title: "a\\u0007b"'), "wrong-type", "title", 2, null, '"a\\u{7}b" holds a character that cannot be printed.'],
  ["half a character", head('title: "a\\ud83d"'), "wrong-type", "title", 2, null, "cannot be printed"],
  ["a list as title", head("title: [One, card]"), "wrong-type", "title", 2, null, "Found a list, expected a title"],
  ["another unit", head("title: x\nunits: inches"), "not-a-word", "units", 3, "in", "expected in or mm. Did you mean in?"],
  ["a precision of 0", head("title: x\nprecision: 0"), "not-a-length", "precision", 3, null, "expected a length above 0"],
  ["copies as a word", head("title: x\ncopies: twelve"), "not-a-count", "copies", 3, null, "expected a number of copies, such as 12, or { guests: 12, samples: 1 }."],
  ["copies in quotes", head('title: x\ncopies: "12"'), "not-a-count", "copies", 3, "12", "Write 12 without quotes."],
  ["half a copy", head("title: x\ncopies: { guests: 2.5 }"), "not-a-count", "copies.guests", 3, null, "Found 2.5, expected a whole number"],
  ["no copies at all", head("title: x\ncopies: { guests: 0 }"), "not-a-count", "copies", 3, null, "Give at least one"],
  ["only spare copies", head("title: x\ncopies: { spares: 2 }"), "not-a-count", "copies", 3, null, "Spares are made only beside those."],
  ["too many copies with the spares", head("title: x\ncopies: { guests: 99999, spares: 2 }"), "too-many", "copies", 3, null, "Guests, samples and spares are 100,001 copies together"],
  ["half a spare", head("title: x\ncopies: { guests: 2, spares: 0.5 }"), "not-a-count", "copies.spares", 3, null, "Found 0.5, expected a whole number"],
  ["too many copies", head("title: x\ncopies: 1e6"), "too-many", "copies", 3, null, "Found 1000000, expected at most 100,000"],
  ["too many copies together", head("title: x\ncopies: { guests: 99999, samples: 99999 }"), "too-many", "copies", 3, null, "199,998 copies together"],
  ["a misspelt tool", head("title: x\ntrimmer: { longestcut: 12 }"), "unknown-key", "trimmer.longestcut", 3, "longest-cut", "Did you mean longest-cut?"],
  ["an unknown way of cutting", head("title: x\ntrimmer: { cuts: strip }"), "not-a-word", "trimmer.cuts", 3, "strips", "expected edge-to-edge or strips. Did you mean strips?"],
  ["a saw as wide as a board", head("title: x\ntrimmer: { kerf: 2 }"), "not-a-length", "trimmer.kerf", 3, null, "expected at most 1 in"],
  ["a length in feet", head("title: x\ntrimmer: { longest-cut: 1 ft }"), "not-a-length", "trimmer.longest-cut", 3, null, "1 ft is 12 in"],
  ["an infinite length", head("title: x\ntrimmer: { longest-cut: .inf }"), "not-a-length", "trimmer.longest-cut", 3, null, "Found .inf, expected a length"],
  ["a length that is no number", head("title: x\ntrimmer: { longest-cut: .nan }"), "not-a-length", "trimmer.longest-cut", 3, null, "Found .nan, expected a length"],
  ["a length that is a date", head("title: x\ntrimmer: { longest-cut: 2024-12-01 }"), "not-a-length", "trimmer.longest-cut", 3, null, '"2024-12-01" is not a length'],

  // Papers
  ["no papers", "sheetwright: 1\ntitle: x\ncards: [{ name: A, format: us-a2, base: cream }]\n", "missing", "papers", 1, null, 'The key "papers" is missing.'],
  ["an empty bundle", "sheetwright: 1\ntitle: x\npapers: {}\ncards: [{ name: A, format: us-a2, base: c }]\n", "missing", "papers", 3, null, "There is no paper here."],
  ["a paper without a size", paper("count: 3"), "missing", "papers.cream", 4, null, "This paper has none of the keys cardstock, paper, glitter, pad and shelf."],
  ["a misspelt material", paper("cardstok: us-letter"), "unknown-key", "papers.cream.cardstok", 4, "cardstock", "Did you mean cardstock?"],
  ["two materials", paper("cardstock: us-letter, glitter: us-letter"), "contradiction", "papers.cream.glitter", 4, null, "here are cardstock and glitter"],
  ["a misspelt sheet", paper("cardstock: us-leter"), "not-a-size", "papers.cream.cardstock", 4, "us-letter", "Did you mean us-letter?"],
  ["a bare A4", paper("cardstock: a4"), "not-a-size", "papers.cream.cardstock", 4, "iso-a4", "Did you mean iso-a4"],
  ["a card as a sheet", paper("cardstock: us-a2"), "not-a-size", "papers.cream.cardstock", 4, null, "us-a2 is a card (4 1/4 x 5 1/2 in), and here a sheet of paper is needed."],
  ["an envelope as a sheet", paper("cardstock: env-us-a7"), "not-a-size", "papers.cream.cardstock", 4, null, "env-us-a7 is an envelope (5 1/4 x 7 1/4 in)"],
  ["one side of a sheet", paper("cardstock: 8 1/2"), "not-a-size", "papers.cream.cardstock", 4, null, "expected two lengths with an x between them"],
  ["a number of sheets in words", paper("cardstock: us-letter, count: twenty"), "not-a-count", "papers.cream.count", 4, null, "expected a whole number of sheets, such as 20, or as needed."],
  ["misspelt words for a count", paper("cardstock: us-letter, count: as neded"), "not-a-count", "papers.cream.count", 4, "as needed", "Did you mean as needed?"],
  ["a count below 0", paper("cardstock: us-letter, count: -1"), "not-a-count", "papers.cream.count", 4, null, "Found -1, expected at least 0"],
  ["no for none", paper("cardstock: us-letter, grain: no"), "not-a-word", "papers.cream.grain", 4, "none", "Did you mean none?"],
  ["the long side of a square", paper("paper: 12 x 12, grain: long"), "contradiction", "papers.cream.grain", 4, null, "The sheet is square, so it has no long side."],
  ["a weight without a unit", paper("cardstock: us-letter, weight: 216"), "wrong-type", "papers.cream.weight", 4, null, '"216" is not a weight.'],
  ["a misspelt grade", paper("cardstock: us-letter, weight: 80 lb covr"), "wrong-type", "papers.cream.weight", 4, "cover", "Did you mean cover?"],
  ["a paper an inch thick and more", paper("cardstock: us-letter, thickness: 12"), "not-a-length", "papers.cream.thickness", 4, null, "expected at most 1 in"],
  ["a pack of no sheets", paper("cardstock: us-letter, pack: 0"), "not-a-count", "papers.cream.pack", 4, null, "expected at least 1: the sheets in a pack"],
  ["a pack without its sheets", paper("cardstock: us-letter, pack: { cost: 8.99 }"), "missing", "papers.cream.pack.sheets", 4, null, "sheets"],
  ["a pack whose cost has a sign", paper('cardstock: us-letter, pack: { sheets: 25, cost: "$8.99" }'), "not-a-count", "papers.cream.pack.cost", 4, null, "Leave out the sign of the currency."],
  ["another word for one-way", paper("cardstock: us-letter, pattern: one way"), "not-a-word", "papers.cream.pattern", 4, "one-way", "Did you mean one-way?"],
  ["a colour by name", paper("cardstock: us-letter, colour: cream"), "not-a-word", "papers.cream.colour", 4, null, "Write # and six digits"],
  ["a colour without its #", paper("cardstock: us-letter, colour: 22304f"), "not-a-word", "papers.cream.colour", 4, "#22304f", 'Did you mean "#22304f"?'],
  ["a colour that looks like a number", paper("cardstock: us-letter, colour: 003040"), "not-a-word", "papers.cream.colour", 4, "#003040", '"003040" is not a colour.'],
  ["a colour hidden by its #", paper("\n    cardstock: us-letter,\n    colour: #22304f\n  "), "missing", "papers.cream.colour", 6, null, "A # begins a comment unless it stands in quotes."],
  ["a cost with its currency", paper("cardstock: us-letter, cost: $0.35"), "not-a-count", "papers.cream.cost", 4, null, "Leave out the sign of the currency."],
  ["a cost of five decimals", paper("cardstock: us-letter, cost: 0.12345"), "not-a-count", "papers.cream.cost", 4, null, "at most four decimals"],
  ["a cost below 0", paper("cardstock: us-letter, cost: -1"), "not-a-count", "papers.cream.cost", 4, null, "Found -1"],
  ["a trim of the whole sheet", paper("cardstock: us-letter, trim: 5"), "layer-vanishes", "papers.cream.trim", 4, null, "Trimming takes the whole sheet of 8 1/2 x 11 in."],
  ["a trim that no cut can make", head("title: x\ntrimmer: { longest-cut: 10 }").replace("us-letter", "us-letter, trim: 1/8"), "contradiction", "papers.cream.trim", 5, null, "takes a cut of 11 in, and the trimmer's longest cut is 10 in."],
  ["an offcut larger than its sheet", paper("cardstock: us-letter, offcuts: [9 x 12]"), "too-large", "papers.cream.offcuts[0]", 4, null, "does not come out of a sheet of 8 1/2 x 11 in"],
  ["an offcut with its height first", paper("cardstock: us-letter, offcuts: [{ size: 11 x 2 }]"), "too-large", "papers.cream.offcuts[0].size", 4, "2 x 11 in", "is 2 x 11 in meant?"],
  ["a pad without designs", paper("pad: 6 x 6"), "missing", "papers.cream.designs", 4, null, 'The key "designs" is missing: a pad needs it.'],
  ["a pad with no design in it", paper("pad: 6 x 6, designs: {}"), "missing", "papers.cream.designs", 4, null, "There is no design here."],
  ["designs of cardstock", paper("cardstock: us-letter, designs: { dots: 3 }"), "contradiction", "papers.cream.designs", 4, null, '"designs" does not go with cardstock: it belongs to a pad or a paper from the shelf.'],
  ["offcuts of a pad as a whole", paper("pad: 6 x 6, designs: { dots: 3 }, offcuts: [2 x 2]"), "contradiction", "papers.cream.offcuts", 4, null, '"offcuts" does not go with a pad'],
  ["a misspelt key of a design", paper("pad: 6 x 6, designs: { dots: { patern: one-way } }"), "unknown-key", "papers.cream.designs.dots.patern", 4, "pattern", '"patern" is not a key of a design of a pad.'],
  ["a paper called back", SMALLEST.replaceAll("cream", "back"), "not-a-word", "papers.back", 4, null, "No paper or design can be called back"],
  ["a paper with a space in its key", SMALLEST.replace("cream: {", "off white: {").replace("base: cream", "base: [off white]"), "wrong-type", 'papers["off white"]', 4, null, '"off white" cannot be the key of a paper or a design.'],
  ["a paper with an unspeakable key", SMALLEST.replace("cream: {", "__proto__: {}\n  cream: {"), "not-readable", "papers.__proto__", 4, null, "cannot be a key"],
  ["more papers than anybody has", SMALLEST.replace("papers:", `papers:\n${Array.from({ length: 200 }, (_, index) => `  p${index}: { paper: 12 x 12 }`).join("\n")}`), "too-many", "papers", 3, null, "There are 201 papers, and 200 are the most."],
  ["more designs than any pad has", paper(`pad: 6 x 6, designs: { ${Array.from({ length: 101 }, (_, index) => `d${index}: 1`).join(", ")} }`), "too-many", "papers.cream.designs", 4, null, "There are 101 designs, and 100 are the most."],
  ["a paper that is a number", SMALLEST.replace("{ cardstock: us-letter }", "5"), "wrong-type", "papers.cream", 4, null, "Found 5, expected a paper"],

  // Cards
  ["no cards", SMALLEST.slice(0, SMALLEST.indexOf("cards:")), "missing", "cards", 1, null, 'The key "cards" is missing.'],
  ["an empty list of cards", project("").replace("cards:\n", "cards: []"), "missing", "cards", 7, null, "an empty list"],
  ["a card that is not in a list", SMALLEST.replace("  - name", "    name"), "wrong-type", "cards", 5, null, "expected a list of cards, each after a hyphen."],
  ["a card without a name", project("  - { format: us-a2, base: night }"), "missing", "cards[0].name", 8, null, 'The key "name" is missing.'],
  ["a card without a size", project("  - { name: A, base: night }"), "missing", "cards[0]", 8, null, "This card has none of the keys format, size and flat."],
  ["a format and a size", project("  - { name: A, format: us-a2, size: 5 x 7, base: night }"), "contradiction", "cards[0].size", 8, null, "here are format and size"],
  ["a bare a2", project("  - { name: A, format: a2, base: night }"), "unknown-format", "cards[0].format", 8, "us-a2", "Did you mean us-a2 (card 4 1/4 x 5 1/2 in)? iso-a2 is a sheet (420 x 594 mm) and env-us-a2 is an envelope (4 3/8 x 5 3/4 in)."],
  ["a bare A7", project("  - { name: A, format: A7, base: night }"), "unknown-format", "cards[0].format", 8, "us-a7", "us-a7 (card 5 x 7 in)"],
  ["an envelope as a format", project("  - { name: A, format: env-us-a7, base: night }"), "unknown-format", "cards[0].format", 8, "us-a7", "env-us-a7 is an envelope (5 1/4 x 7 1/4 in), and a card is needed here. What goes in it is us-a7 (card 5 x 7 in)."],
  ["a sheet as a format", project("  - { name: A, format: iso-a2, base: night }"), "unknown-format", "cards[0].format", 8, "us-a2", "iso-a2 is a sheet (420 x 594 mm), and a card is needed here."],
  ["a misspelt format", project("  - { name: A, format: us-a77, base: night }"), "unknown-format", "cards[0].format", 8, "us-a7", '"us-a77" is not the name of a card size.'],
  ["an envelope that no named card goes in", project("  - { name: A, format: env-us-16, base: night }"), "unknown-format", "cards[0].format", 8, null, "Name the card that goes in it, or give a size."],
  ["a sheet as large as a card", project("  - { name: A, format: us-5x7, base: night }"), "unknown-format", "cards[0].format", 8, "us-a7", "us-5x7 is a sheet (5 x 7 in)"],
  ["a sheet like no card", project("  - { name: A, format: us-letter, base: night }"), "unknown-format", "cards[0].format", 8, null, "Name a card, such as us-a2, or give a size."],
  ["a name like no other", project("  - { name: A, format: papyrus, base: night }"), "unknown-format", "cards[0].format", 8, null, "Name one such as us-a2 or us-a7, or give a size"],
  ["a size without a name as a format", project("  - { name: A, format: 5 x 8, base: night }"), "unknown-format", "cards[0].format", 8, "size: 5 x 8", "Write size: 5 x 8."],
  ["a size as a format", project("  - { name: A, format: 5 x 7, base: night }"), "unknown-format", "cards[0].format", 8, "size: 5 x 7", "That of us-a7 has a name."],
  ["a name as a size", project("  - { name: A, size: us-a7, base: night }"), "not-a-size", "cards[0].size", 8, "5 x 7 in", "us-a7 is the name of a card size"],
  ["a stand of a size", project("  - { name: A, size: 5 x 7, stand: lying, base: night }"), "contradiction", "cards[0].stand", 8, null, '"stand" does not go with a card with a size of its own'],
  ["another word for lying", project("  - { name: A, format: us-a7, stand: landscape, base: night }"), "not-a-word", "cards[0].stand", 8, "lying", "Did you mean lying?"],
  ["an unknown fold", project("  - { name: A, format: us-a7, fold: sides, base: night }"), "not-a-word", "cards[0].fold", 8, "side", "expected side, top, either, flat, gate or another kind of fold"],
  ["an unknown base", project("  - { name: A, format: us-a7, base: nigth }"), "unknown-paper", "cards[0].base", 8, "night", 'There is no paper "nigth".'],
  ["a base without a paper", project("  - { name: A, format: us-a7, base: { grain: ignore } }"), "missing", "cards[0].base.paper", 8, null, 'The key "paper" is missing.'],
  ["an empty base", project("  - { name: A, format: us-a7, base: }"), "missing", "cards[0].base", 8, null, 'Nothing stands behind "base".'],
  ["a grain that is required and not known", project("  - { name: A, size: 5 x 7, base: { paper: plain, grain: require } }"), "grain-required", "cards[0].base.grain", 8, null, "bend the sheet"],
  ["an empty front", project("  - name: A\n    format: us-a7\n    base: night\n    front:"), "missing", "cards[0].front", 11, null, 'Nothing stands behind "front".'],

  // Layers
  ["a layer of no kind", layer("border: 1/8"), "missing", "cards[0].front[0]", 12, null, "This layer has none of the keys mat, panel, bands, strip, die, shape and sentiment."],
  ["a layer of two kinds", layer("mat: night, panel: plain"), "contradiction", "cards[0].front[0].panel", 12, null, "or make two layers of them"],
  ["a misspelt kind", layer("pannel: night"), "unknown-key", "cards[0].front[0].pannel", 12, "panel", '"pannel" is not a key of a layer. Did you mean panel?'],
  ["a misspelt border", layer("panel: night, boarder: 1/8"), "unknown-key", "cards[0].front[0].boarder", 12, "border", '"boarder" is not a key of a panel. Did you mean border?'],
  ["a key of another kind", layer("panel: night, runs: across"), "contradiction", "cards[0].front[0].runs", 12, null, '"runs" does not go with a panel: it belongs to bands or a strip.'],
  ["a word as a layer", front("      - night"), "wrong-type", "cards[0].front[0]", 12, null, 'Found "night", expected a layer, such as mat: copper.'],
  ["any paper of a kind that there is none of", layer("mat: any glitter"), "unknown-paper", "cards[0].front[0].mat", 12, null, "No paper of the project is any glitter. Name a paper, or add one of that kind."],
  ["any paper heavier than there is", front("      - { mat: any cardstock of at least 80 lb cover }").replace("grain: long", "grain: long, weight: 65 lb"), "unknown-paper", "cards[0].front[0].mat", 12, null, "The heaviest of that kind is night with 176 g/m2, 40 less than asked for. Ask for less, or name a paper."],
  ["any paper by its weight where none is known", layer("mat: any plain paper of at least 200 gsm"), "unknown-paper", "cards[0].front[0].mat", 12, null, "The weight of some that may be meant is not known: write it at papers.night.weight and papers.plain.weight."],
  ["any paper of a misspelt kind", layer("mat: any cardstok"), "unknown-paper", "cards[0].front[0].mat", 12, "any cardstock", "Did you mean any cardstock?"],
  ["any paper of a kind that is none", layer("mat: any red card"), "unknown-paper", "cards[0].front[0].mat", 12, null, "After any may come plain or patterned"],
  ["any paper of a weight that is none", layer("mat: any paper of at least 200"), "wrong-type", "cards[0].front[0].mat", 12, null, '"200" is not a weight.'],
  ["any paper beside all that it means", layer("mat: [stars, any pad]"), "twice", "cards[0].front[0].mat[1]", 12, null, '"any pad" is among the papers before it.'],
  ["an unknown design", layer("panel: stars.comet"), "unknown-paper", "cards[0].front[0].panel", 12, "stars.comets", "Did you mean stars.comets?"],
  ["a design without its pad", layer("panel: comets"), "unknown-paper", "cards[0].front[0].panel", 12, "stars.comets", "Did you mean stars.comets?"],
  ["a design of a plain paper", layer("panel: night.dots"), "unknown-paper", "cards[0].front[0].panel", 12, null, "night is no pad, so it has no designs."],
  ["a back that is not printed", layer("panel: night.back"), "unknown-paper", "cards[0].front[0].panel", 12, null, "night has no printed back."],
  ["the back of a pad", layer("panel: stars.back"), "unknown-paper", "cards[0].front[0].panel", 12, null, "stars is a pad: say which design's back, such as stars.dots.back."],
  ["a paper twice in a choice", layer("panel: [night, night]"), "twice", "cards[0].front[0].panel[1]", 12, null, '"night" is among the papers before it.'],
  ["an empty choice", layer("panel: []"), "missing", "cards[0].front[0].panel", 12, null, "an empty list"],
  ["a border that divides by 0", layer("panel: night, border: 1/0"), "not-a-length", "cards[0].front[0].border", 12, null, "a number other than 0 below the line of the fraction"],
  ["a border with a comma", layer('panel: night, border: "0,5"'), "not-a-length", "cards[0].front[0].border", 12, null, "Write 0.5 with a dot."],
  ["a border that is true", layer("panel: night, border: true"), "not-a-length", "cards[0].front[0].border", 12, null, "Found true, expected a length"],
  ["a border without sides", layer("panel: night, border: {}"), "missing", "cards[0].front[0].border", 12, null, "The border names no side."],
  ["a total and a side", layer("panel: night, border: { total: 1/4, left: 1/8 }"), "contradiction", "cards[0].front[0].border.total", 12, null, "so it goes without left"],
  ["a border and a size", layer("panel: night, border: 1/8, size: 3 x 4"), "contradiction", "cards[0].front[0].size", 12, null, "The layer has a border and a size"],
  ["a place without a size", layer("panel: night, left: 1/2"), "contradiction", "cards[0].front[0].left", 12, null, "The key left says where a layer of its own size lies"],
  ["left and right", layer("panel: night, size: 2 x 2, left: 1, right: 1"), "contradiction", "cards[0].front[0].right", 12, null, "given twice in one direction, by left and by right"],
  ["a line and a distance", layer("panel: night, size: 2 x 2, line: upper third, top: 1"), "contradiction", "cards[0].front[0].line", 12, null, "by line: upper third and by top"],
  ["two lines in one direction", layer("panel: night, size: 2 x 2, line: [left third, right third]"), "contradiction", "cards[0].front[0].line[1]", 12, null, "The middle cannot lie on the left third and on the right third."],
  ["a misspelt line", layer("panel: night, size: 2 x 2, line: uper third"), "not-a-word", "cards[0].front[0].line", 12, "upper third", "Did you mean upper third?"],
  ["bands without papers", layer("bands: [1, 3]"), "missing", "cards[0].front[0].papers", 12, null, 'The key "papers" is missing: bands need it.'],
  ["fewer papers than bands", layer("bands: [1, 1, 1], papers: [night, plain]"), "contradiction", "cards[0].front[0].papers", 12, null, "There are 3 bands and 2 papers."],
  ["one band", layer("bands: [1], papers: [night]"), "wrong-type", "cards[0].front[0].bands", 12, null, "a list of 1, expected at least 2 entries"],
  ["bands by nothing", layer("bands: {}, papers: [night, plain]"), "missing", "cards[0].front[0].bands.widths", 12, null, 'The key "widths" is missing.'],
  ["bands as fractions", layer("bands: [1/3, 2], papers: [night, plain]"), "not-a-count", "cards[0].front[0].bands[0]", 12, null, 'Found "1/3", expected a whole number, such as 3 in [1, 3].'],
  ["a misspelt seam", layer("bands: [1, 1], papers: [night, plain], seam: bar"), "not-a-word", "cards[0].front[0].seam", 12, "bare", "Did you mean bare?"],
  ["a seam without a width", layer("bands: [1, 1], papers: [night, plain], seam: { cover: night }"), "missing", "cards[0].front[0].seam.width", 12, null, 'The key "width" is missing.'],
  ["bands in words that are not known", layer("bands: two halfs, papers: [night, plain]"), "wrong-type", "cards[0].front[0].bands", 12, null, 'Found "two halfs", expected proportions, such as [1, 3], words such as two thirds and one third'],
  ["bands in a misspelt word", layer("bands: third, papers: [night, plain, night]"), "wrong-type", "cards[0].front[0].bands", 12, "thirds", "Did you mean thirds?"],
  ["bands of widths that leave something over", layer("bands: { widths: [1, 2] }, papers: [night, plain]"), "contradiction", "cards[0].front[0].bands.widths", 12, null, "add up to 3 in, and they divide 6 3/4 in: 3 3/4 in are missing. Write rest for one of them"],
  ["bands of widths that are too much", layer("bands: { widths: [5, 2] }, papers: [night, plain]"), "contradiction", "cards[0].front[0].bands.widths", 12, null, "add up to 7 in, and they divide 6 3/4 in: 1/4 in are too much."],
  ["bands of widths that leave no rest", layer("bands: { widths: [5, rest, 2] }, papers: [night, plain, night]"), "part-vanishes", "cards[0].front[0].bands.widths", 12, null, "nothing is left for the rest, and 1/4 in are too much."],
  ["two bands that are the rest", layer("bands: { widths: [rest, rest] }, papers: [night, plain]"), "contradiction", "cards[0].front[0].bands.widths[1]", 12, null, "Another band is the rest already"],
  ["fewer papers than bands in a band", layer("bands: [1, 1], papers: [night, { bands: thirds, papers: [plain] }]"), "contradiction", "cards[0].front[0].papers[1].papers", 12, null, "There are 3 bands and 1 paper."],
  ["a misspelt key in a band", layer("bands: [1, 1], papers: [night, { band: thirds, papers: [plain] }]"), "unknown-key", "cards[0].front[0].papers[1].band", 12, "bands", "Did you mean bands?"],
  ["a gap wider than a band", layer("bands: [1, 8], papers: [night, plain], seam: { bare: true, gap: 2 }"), "part-vanishes", "cards[0].front[0].seam.gap", 12, null, "Band 1 of 1b bands vanishes: its share is 3/4 in, and the gaps of 2 in beside it take 1 in."],
  ["a seam with a cover and a ribbon", layer("bands: [1, 1], papers: [night, plain], seam: { cover: night, ribbon: copper, width: 1/2 }"), "contradiction", "cards[0].front[0].seam.ribbon", 12, null, "here are cover and ribbon"],
  ["a width of nothing", layer("bands: [1, 1], papers: [night, plain], seam: { bare: true, width: 1/2 }"), "contradiction", "cards[0].front[0].seam.width", 12, null, "The key width is the width of what covers the seam, and nothing does."],
  ["a colour of a paper cover", layer("bands: [1, 1], papers: [night, plain], seam: { cover: night, width: 1/2, colour: '#123456' }"), "contradiction", "cards[0].front[0].seam.colour", 12, null, "is the colour of a ribbon or a tape"],
  ["a join that does not say how", layer("mat: stars, join: { cover: night, width: 1/2 }"), "missing", "cards[0].front[0].join", 12, null, "This join does not say how. Write ends: cream, parts: 2 or hide: below the layer."],
  ["a join in two ways", layer("mat: stars, join: { ends: night, parts: 2 }"), "contradiction", "cards[0].front[0].join.parts", 12, null, "here are ends and parts"],
  ["a join in four parts", layer("mat: stars, join: { parts: 4 }"), "too-many", "cards[0].front[0].join.parts", 12, null, "2 or 3 parts"],
  ["a join of parts at one end", layer("mat: stars, join: { parts: 2, at: one end }"), "contradiction", "cards[0].front[0].join.at", 12, null, "The key at says where ends of another paper are."],
  ["what is cut short with a cover", layer("mat: stars, join: { hide: below the layer, gap: 1/8 }"), "contradiction", "cards[0].front[0].join.gap", 12, null, "what is cut short has none"],
  ["what is cut short with nothing above it", layer("panel: stars, join: { hide: below the layer }"), "contradiction", "cards[0].front[0].join", 12, null, "The paper of the 1b panel gives 6 in of its 6 3/4 in"],
  ["a join of bands", layer("bands: [1, 1], papers: [night, plain], join: { parts: 2 }"), "contradiction", "cards[0].front[0].join", 12, null, '"join" does not go with bands'],
  ["a strip without a width", layer("strip: night"), "missing", "cards[0].front[0].width", 12, null, "a strip needs it"],
  ["a place along a whole strip", layer("strip: night, width: 1/2, left: 1"), "contradiction", "cards[0].front[0].left", 12, null, "has no meaning for a strip that runs across from edge to edge"],
  ["a line along a whole strip", layer("strip: night, width: 1/2, runs: upright, line: upper third"), "contradiction", "cards[0].front[0].line", 12, null, "has no meaning for a strip that runs upright"],
  ["a sentiment without a size", layer("sentiment: night, text: Hello"), "missing", "cards[0].front[0].size", 12, null, "a sentiment needs it"],
  ["a mat of a sentiment without a paper", layer("sentiment: night, size: 2 x 1, mats: [{ border: 1/16 }]"), "missing", "cards[0].front[0].mats[0].mat", 12, null, 'The key "mat" is missing.'],
  ["another word for across", layer("strip: night, width: 1/2, runs: horizontal"), "not-a-word", "cards[0].front[0].runs", 12, "across", "Did you mean across?"],
  ["an unknown way of the grain", layer("panel: night, grain: { along: up }"), "not-a-word", "cards[0].front[0].grain.along", 12, null, "expected upright or across"],
  ["layers deeper than anybody lays them", front(nested(13)), "too-many", `cards[0].front[0]${".layers[0]".repeat(11)}.layers`, 12, null, "Layers lie more than 12 deep"],

  // What does not fit
  ["a layer that vanishes", layer("mat: night, border: 3"), "layer-vanishes", "cards[0].front[0].border", 12, null, "Nothing is left"],
  ["a layer larger than its carrier", layer("panel: plain, size: 6 x 4"), "too-large", "cards[0].front[0].size", 12, null, "it is 1 in too wide"],
];

function nested(depth: number): string {
  return `      - ${"{ panel: night, border: 1/16, layers: [".repeat(depth)}${"] }".repeat(depth)}`;
}

describe("one mistake in a file", () => {
  it.each(CASES)("%s", (_, text, code, path, line, suggestion, words) => {
    const { project: read, faults } = readProject(text);
    expect(read).toBeNull();
    expect(faults.map((fault) => `${fault.code} ${fault.path}`)).toEqual([`${code} ${path}`]);
    expect(faults[0]).toMatchObject({ code, path, line, suggestion });
    expect(faults[0]?.message).toContain(words);
  });

  it("is said in full sentences, with a column and what was expected, in no words of a library", () => {
    for (const [what, text] of CASES) {
      for (const { message, expected, column, found } of readProject(text).faults) {
        expect(message, what).toMatch(/^[^a-z]?[\p{L}\d"][\s\S]*[.?]$/u);
        expect(message, what).not.toMatch(
          /invalid|received|undefined|\[object|null|regex|schema|Implicit|scalar|mapping/i,
        );
        expect(expected, what).not.toBe("");
        expect(column, what).toBeGreaterThan(0);
        expect(found.length, what).toBeLessThan(80);
      }
    }
  });
});

describe("many mistakes in a file", () => {
  const text = `sheetwright: 1
titel: Broken
units: mm
papers:
  night: { cardstock: us-leter, count: many, grain: no }
  stars: { pad: 150 x 150, designs: { dots: 6 } }
cards:
  - name: First
    format: a6
    base: night
    front:
      - mat: stars.dot
        border: 1/8
      - bands: [1, 2, 3]
        papers: [night, stars.dots]
  - name: Second
    size: 100 x 150
    base: stars
    front:
      - panel: night
        size: 120 x 100
      - panel: night
        border: 80
`;

  it("are all found at once, in the order of the file, those of layers that do not fit too", () => {
    expect(readProject(text).faults.map(({ line, code, path }) => `${line} ${code} ${path}`)).toEqual([
      "2 unknown-key titel",
      "5 not-a-size papers.night.cardstock",
      "5 not-a-count papers.night.count",
      "5 not-a-word papers.night.grain",
      "9 unknown-format cards[0].format",
      "12 unknown-paper cards[0].front[0].mat",
      "13 not-a-length cards[0].front[0].border",
      "15 contradiction cards[0].front[1].papers",
      "21 too-large cards[1].front[0].size",
      "23 layer-vanishes cards[1].front[1].border",
    ]);
  });

  it("do not follow from each other: a paper that cannot be read is still a paper", () => {
    const codes = (broken: string) => readProject(broken).faults.map(({ code, path }) => `${code} ${path}`);
    const good = project(
      "  - { name: A, format: us-a2, base: { paper: night, grain: require }, front: [{ panel: stars.dots }] }",
    );
    expect(codes(good)).toEqual([]);
    expect(codes(good.replace("grain: long", "grain: lnog"))).toEqual(["not-a-word papers.night.grain"]);
    expect(codes(good.replace("pad: 6 x 6", "pda: 6 x 6"))).toEqual(["unknown-key papers.stars.pda"]);
    expect(codes(good.replace(/\{ dots.*\} \}/, "6 }"))).toEqual(["wrong-type papers.stars.designs"]);
    expect(codes(good.replace(/papers:[\s\S]*(?=cards:)/, "papers: none\n"))).toEqual(["wrong-type papers"]);
    expect(codes(good.replace("title:", "units: cm\ntitle:"))).toEqual(["not-a-word units"]);
  });

  it("are found in a list of any length", () => {
    const layers = Array.from({ length: 100 }, () => "      - { panel: nigth }").join("\n");
    expect(readProject(front(layers)).faults).toHaveLength(100);
    const cards = Array.from({ length: 201 }, () => "  - { name: A, format: us-a2, base: night }").join("\n");
    expect(readProject(project(cards)).faults).toMatchObject([{ code: "too-many", path: "cards" }]);
  });
});

describe("files that nobody writes", () => {
  it.each([
    ["brackets without end", "[".repeat(100_000)],
    ["braces without end", "{a: ".repeat(20_000)],
    ["hyphens without end", "- ".repeat(50_000)],
    ["numbers without end", `a: [${"1, ".repeat(50_000)}`],
    ["quote marks without end", "a: '\n".repeat(20_000)],
    ["a book", "x: y\n".repeat(300_000)],
    [
      "an indentation without end",
      Array.from({ length: 1000 }, (_, depth) => `${" ".repeat(depth)}a:`).join("\n"),
    ],
    [
      "aliases of aliases",
      `a: &a [x, x]\n${Array.from({ length: 20 }, (_, i) => `b${i}: &b${i} [${"*a, ".repeat(9)}*a]`).join("\n")}`,
    ],
    ["bytes of something else", "\u0000\u0001PNG\ufffd\u001a"],
  ])("%s end in a fault", (_, text) => {
    const { project: read, faults } = readProject(text);
    expect(read).toBeNull();
    expect(faults.length).toBeGreaterThan(0);
  });
});

describe("a paper of which the size cannot be read", () => {
  it("says nothing of how a layer is made up of it, nor of the grain of an insert", () => {
    const text = project(
      "  - name: Broken\n    format: us-a7\n    base: night\n    insert: { paper: stars, grain: require }\n" +
        "    front: [{ mat: stars, join: { parts: 2, bare: true } }]\n",
    ).replace("pad: 6 x 6", "pad: six by six");
    expect(readProject(text).faults.map(({ code, path }) => [code, path])).toEqual([
      ["not-a-size", "papers.stars.pad"],
    ]);
  });
});
