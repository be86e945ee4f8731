import { inches, millimetres, type Ticks, type Unit } from "@sheetwright/measure";
import fc from "fast-check";

/** A value of a project file. */
export type FileValue = string | number | boolean | readonly FileValue[] | FileObject;

/** A project file, or a part of one, before it is written down. */
export interface FileObject {
  readonly [key: string]: FileValue;
}

/** Draws values; what it draws is the same for the same seed. */
export class Draw {
  readonly #value: fc.GeneratorValue;
  readonly unit: Unit;
  /** What lengths are whole multiples of: 1/16 in or 0.5 mm. */
  readonly step: Ticks;

  constructor(value: fc.GeneratorValue, unit: Unit) {
    this.#value = value;
    this.unit = unit;
    this.step = unit === "in" ? inches(1 / 16) : millimetres(0.5);
  }

  whole(min: number, max: number): number {
    return this.#value(fc.integer, { min, max: Math.max(min, max) });
  }

  /** True in about `percent` of a hundred draws. */
  sometimes(percent: number): boolean {
    return this.whole(0, 99) >= 100 - percent;
  }

  one<Value>(values: readonly Value[]): Value {
    const value = values[this.whole(0, values.length - 1)];
    if (value === undefined) throw new RangeError("Expected values to choose from.");
    return value;
  }

  /** Writes so many steps in one of the ways that a maker writes a length. */
  length(steps: number): string | number {
    if (this.unit === "mm") {
      const value = steps / 2;
      return this.one([value, value, `${value}`, `${value} mm`, `${value}mm`]);
    }
    return this.one([steps / 16, this.inches(steps), this.inches(steps), `${this.inches(steps)} in`]);
  }

  /** Writes a size, width first. */
  size(width: number, height: number): string {
    if (this.unit === "mm") return `${width / 2} x ${height / 2}`;
    return `${this.inches(width)} x ${this.inches(height)}`;
  }

  private inches(steps: number): string {
    const whole = Math.floor(steps / 16);
    let numerator = steps % 16;
    let denominator = 16;
    while (numerator > 0 && numerator % 2 === 0) {
      numerator /= 2;
      denominator /= 2;
    }
    if (numerator === 0) return String(whole);
    return whole === 0 ? `${numerator}/${denominator}` : `${whole} ${numerator}/${denominator}`;
  }
}
