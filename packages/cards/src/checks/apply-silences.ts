import type { Project, Silence } from "../project.js";
import { isWithin } from "../project-file/value-path.js";
import type { Found } from "./finding.js";
import { listed } from "./listed.js";

/** A finding and the reason for which it is silenced. */
export type Heard = Found & { readonly silenced: string | null };

/** Places named before the rest is only counted. */
const SHOWN = 3;

/**
 * Marks what the silences of a project cover with their reasons, and adds a finding for each silence that covers nothing.
 * The first of several that cover a finding gives the reason, and none of them counts as idle.
 *
 * @internal
 */
export function applySilences(
  found: readonly Found[],
  { silences }: Pick<Project, "silences">,
): readonly Heard[] {
  // Idle silences can be silenced as anything else, but a silence of those does not answer for itself.
  const ofIdle = silences.filter(({ check }) => check === "silence-unused");
  const others = silences.filter(({ check }) => check !== "silence-unused");
  const idle = idleAmong(others, found);
  const idleOfIdle = idleAmong(ofIdle, idle);
  return [...found, ...idle]
    .map((finding): Heard => {
      const silence = silences.find((one) => covers(one, finding));
      return { ...finding, silenced: silence?.because ?? null };
    })
    .concat(idleOfIdle.map((finding) => ({ ...finding, silenced: null })));
}

function covers({ check, at }: Silence, { code, path }: Found): boolean {
  return check === code && (at === null || isWithin(path, at));
}

function idleAmong(silences: readonly Silence[], found: readonly Found[]): readonly Found[] {
  return silences
    .filter((silence) => !found.some((finding) => covers(silence, finding)))
    .map(({ path, check, at }) => {
      const elsewhere = found.filter(({ code }) => code === check).map((finding) => finding.path);
      const shown =
        elsewhere.length > SHOWN
          ? [...elsewhere.slice(0, SHOWN), `${elsewhere.length - SHOWN} more places`]
          : elsewhere;
      const message =
        at === null || elsewhere.length === 0
          ? `Nothing is silenced here: ${check} finds nothing${at === null ? "" : ` at ${at}`}. Leave this silence out.`
          : `Nothing is silenced here: ${check} finds nothing at ${at}, but at ${listed(shown)}. Name that place, or leave this silence out.`;
      return { code: "silence-unused", path, message };
    });
}
