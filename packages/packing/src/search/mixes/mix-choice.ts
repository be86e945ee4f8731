import type { RandomStream } from "../random-stream.js";
import type { SheetMix } from "./sheet-mixes.js";

/** Parameters of the choice; one set serves all problems. */
const TUNING = {
  /** Share of the first plan's waste that a better plan is expected to have. */
  expected: 0.5,
  /** What a mix is less worth after each time that it was tried in vain. */
  growth: 1.5,
  /** By which share of themselves scores are disturbed. */
  noise: 0.5,
  /** Share of the area needed that counts as lacking on every mix, so that small gains are not worth all work. */
  effort: 0.002,
};

/** A mix chosen, and how often it was tried before. */
export interface ChosenMix {
  readonly mix: SheetMix;
  readonly tries: number;
}

/**
 * Decides which mix of sheets is tried next: one that promises much less cost and is likely to be enough. Waste lies along
 * the edges of sheets, so what a mix needs besides the area of the pieces is taken to grow with its rim; how fast is
 * learnt from what the last try lacked. A mix already tried is judged by what was open in the end.
 */
export class MixChoice {
  private readonly random: RandomStream;
  private readonly needed: number;
  /** Waste along the rim, as a width. */
  private waste: number;
  private readonly tried = new Map<string, { tries: number; open: number }>();

  /**
   * @param needed area of all pieces.
   * @param first the sheets of the plan to improve.
   */
  constructor(random: RandomStream, needed: number, first: SheetMix) {
    this.random = random;
    this.needed = needed;
    this.waste = (TUNING.expected * Math.max(0, first.area - needed)) / first.rim;
  }

  /** The best choice of some mixes, all of which cost less than the best plan does; undefined where there is none. */
  choose(mixes: readonly SheetMix[], cost: number): ChosenMix | undefined {
    let chosen: ChosenMix | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const mix of mixes) {
      const known = this.tried.get(keyOf(mix));
      let lack = known ? known.open : Math.max(0, this.waste * mix.rim - (mix.area - this.needed));
      for (let tries = known?.tries ?? 0; tries > 0; tries--) lack *= TUNING.growth;
      const disturbed = 1 + TUNING.noise * (this.random.unit() - 0.5);
      const score = ((lack + TUNING.effort * this.needed) / (cost - mix.cost)) * disturbed;
      if (score >= least) continue;
      least = score;
      chosen = { mix, tries: known?.tries ?? 0 };
    }
    return chosen;
  }

  /** Takes note that a mix was not enough: what was open at least in this try. */
  failed({ mix, tries }: ChosenMix, open: number): void {
    const known = this.tried.get(keyOf(mix));
    this.tried.set(keyOf(mix), { tries: tries + 1, open: Math.min(known?.open ?? open, open) });
    const waste = (open + mix.area - this.needed) / mix.rim;
    this.waste = known ? Math.min(this.waste, waste) : waste;
  }
}

function keyOf(mix: SheetMix): string {
  return mix.counts.join(" ");
}
