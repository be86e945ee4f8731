import type { OutlinePlace } from "./outline-read-error.js";

/** What was left out, or taken to be so, while a file was read. */
export type OutlineNoteCode =
  /** Strokes have a width, cuts have none. */
  | "stroke-width"
  /** Lines without a fill beside filled shapes. */
  | "lines-left-out"
  /** Lines without a fill that lie in each other were read as windows and parts. */
  | "lines-nested"
  /** The same line drawn twice was read once. */
  | "doubles-left-out"
  /** Shapes with neither fill nor stroke. */
  | "invisible-left-out"
  /** What is hidden by `display`, `visibility` or `opacity`. */
  | "hidden-left-out"
  | "clip-not-applied"
  | "mask-not-applied"
  | "filter-not-applied"
  | "image-left-out"
  | "text-left-out"
  | "open-path-left-out"
  /** Scripts and event handlers; nothing is ever run. */
  | "script-left-out"
  /** What would have to be fetched; nothing ever is. */
  | "external-left-out"
  | "animation-left-out"
  /** Style rules whose selectors are not understood. */
  | "style-rule-left-out"
  | "unknown-element-left-out"
  /** The file states no size. */
  | "size-taken"
  | "gap-closed"
  | "overlap-joined"
  | "specks-dropped"
  | "beyond-page";

/** One kind of thing that the reader should know. */
export interface OutlineNote extends OutlinePlace {
  readonly code: OutlineNoteCode;
  /** How many there are; `line` and `element` are those of the first. */
  readonly count: number;
  /** In full sentences, without the place. */
  readonly message: string;
}

/**
 * Collects notes, one a kind.
 *
 * @internal
 */
export class Notes {
  readonly #notes = new Map<OutlineNoteCode, { place: OutlinePlace; sentence: string; count: number }>();

  /** The place and the sentence of the first of its kind are kept. */
  add(code: OutlineNoteCode, place: OutlinePlace, sentence: string): void {
    const known = this.#notes.get(code);
    if (known === undefined) this.#notes.set(code, { place, sentence, count: 1 });
    else known.count += 1;
  }

  has(code: OutlineNoteCode): boolean {
    return this.#notes.has(code);
  }

  list(): readonly OutlineNote[] {
    return [...this.#notes].map(([code, { place, sentence, count }]) => ({
      code,
      line: place.line,
      element: place.element,
      count,
      message: `${sentence}${count > 1 ? ` (So ${count} times.)` : ""}`,
    }));
  }
}
