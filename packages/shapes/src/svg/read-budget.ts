import { fatal, type OutlinePlace } from "./outline-read-error.js";
import type { ReadLimits } from "./read-options.js";
import type { SvgElement } from "./svg-element.js";

/**
 * Counts what has been read of a file against its limits.
 *
 * @internal
 */
export class ReadBudget {
  readonly #limits: ReadLimits;
  #characters = 0;
  #elements = 0;
  #commands = 0;
  #corners = 0;

  constructor(limits: ReadLimits) {
    this.#limits = limits;
  }

  get commandsLeft(): number {
    return this.#limits.commands - this.#commands;
  }

  takeElement(place: OutlinePlace): void {
    this.#elements += 1;
    if (this.#elements > this.#limits.elements) {
      throw overLimit(
        this.#limits.elements,
        "elements",
        "Leave out what is no outline, or join paths.",
        place,
      );
    }
  }

  checkDepth(depth: number, place: OutlinePlace): void {
    if (depth > this.#limits.depth) {
      throw overLimit(this.#limits.depth, "elements in each other", "Ungroup the drawing.", place);
    }
  }

  /** What is drawn again by `use` is read again. */
  takeCharacters({ attributes }: SvgElement, place: OutlinePlace): void {
    for (const [name, value] of attributes) this.#characters += name.length + value.length;
    if (this.#characters > this.#limits.characters) {
      throw overLimit(
        this.#limits.characters,
        "characters, those counted again that are used again",
        SIMPLIFY,
        place,
      );
    }
  }

  takeCommands(count: number, place: OutlinePlace): void {
    this.#commands += count;
    if (this.#commands > this.#limits.commands) {
      throw overLimit(this.#limits.commands, "path commands and corners", SIMPLIFY, place);
    }
  }

  /** Corners that curves have at least. */
  takeCorners(count: number, place: OutlinePlace): void {
    this.#corners += count;
    this.checkCorners(this.#corners, place);
  }

  checkCorners(count: number, place: OutlinePlace): void {
    if (count > this.#limits.corners) {
      throw overLimit(this.#limits.corners, "corners after curves are followed", SIMPLIFY, place);
    }
  }
}

/** @internal */
export const SIMPLIFY = "Simplify the paths in the program that made them.";

function overLimit(most: number, what: string, help: string, place: OutlinePlace) {
  return fatal("over-limit", place, {
    wrong: `There are more than ${most} ${what}; no more are read.`,
    found: `more than ${most} ${what}`,
    expected: `at most ${most}`,
    help,
  });
}
