/** An axis from 0 to a round number, with marks at round steps. */
export interface RoundScale {
  readonly most: number;
  readonly marks: readonly number[];
}

/** The smallest round axis that holds a number: marks at 1, 2 or 5 times a power of ten, at most `steps` of them beside 0. */
export function roundScale(largest: number, steps: number): RoundScale {
  let step = 1;
  for (let next = 1; Math.ceil(largest / step) > steps; next++) {
    step = ([1, 2, 5][next % 3] as number) * decade(Math.floor(next / 3));
  }
  const count = Math.max(1, Math.ceil(largest / step));
  return { most: count * step, marks: Array.from({ length: count + 1 }, (_, mark) => mark * step) };
}

function decade(power: number): number {
  let result = 1;
  for (let i = 0; i < power; i++) result *= 10;
  return result;
}
